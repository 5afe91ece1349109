import { endWithNpm } from '../../scripts/end-with-npm.ts'

// a program that would run for ever, and says its number
endWithNpm(50)
process.on('SIGTERM', () => process.exit(0))
setInterval(() => undefined, 60_000)
console.log(process.pid)
