#!/usr/bin/env node
// Plain JavaScript, because an older Node than ours may be the one that starts it.
import { spawn } from 'node:child_process'
import { existsSync } from 'node:fs'
import { fileURLToPath } from 'node:url'

const NEEDED = 24
const ours = fileURLToPath(new URL('../node_modules/.bin/node', import.meta.url))

if (Number(process.versions.node.split('.')[0]) >= NEEDED) {
  const { main } = await import('../main/shells/command-line/cli.ts')
  await main()
} else if (existsSync(ours)) {
  // The terminal sends Ctrl-C to both; this one only waits for the other.
  for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => child.kill(signal))
  const child = spawn(ours, [fileURLToPath(import.meta.url), ...process.argv.slice(2)], { stdio: 'inherit' })
  child.on('exit', (code, signal) => { process.exitCode = code ?? (signal === 'SIGINT' ? 130 : 1) })
} else {
  console.error(`Dipledger needs Node ${NEEDED}; this is ${process.version}. Run npm ci in its folder, which brings it.`)
  process.exitCode = 1
}
