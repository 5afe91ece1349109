import { mkdirSync, readFileSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { root, run, runAll } from './run.ts'
import { ensureTestPrograms } from './test-programs.ts'
import { readTestReport } from './test-report.ts'

/** All tests. The last line is the count. Arguments go to Vitest: `npm test -- tests/core/tank`. */
const missing = ensureTestPrograms()
if (missing.length > 0) {
  console.error(`The tests need programs that are not here: ${missing.map((program) => `${program.name} (Debian package ${program.package})`).join(', ')}.`)
  process.exit(1)
}
const report = join(root, 'out', 'test-report.json')
mkdirSync(join(root, 'out'), { recursive: true })
rmSync(report, { force: true })
await runAll([['vite', 'build', '--config', 'vite.config.ts', '--logLevel', 'warn']])
const code = await run('vitest', ['run', '--reporter=default', '--reporter=json', `--outputFile.json=${report}`, ...process.argv.slice(2)])
const { passed, failed, skipped, failures } = readTestReport(readFileSync(report, 'utf8'))
for (const name of failures) console.log(`FAILED: ${name}`)
for (const name of skipped) console.log(`SKIPPED, NOT TESTED HERE: ${name}`)
if (skipped.length > 0) console.log(`${skipped.length} skipped, named above`)
console.log(`${passed} passed, ${failed} failed`)
process.exitCode = failed > 0 ? 1 : code
