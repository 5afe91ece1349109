import { join } from 'node:path'
import { electronBinary } from './electron-binary.ts'
import { root, run, runAll } from './run.ts'

/** Builds the program and opens it on the sample terminal: in its own window, or where that cannot be, in a browser. */
const samples = ['--samples', join(root, 'samples')]
const asked = process.argv.slice(2)
const args = asked.includes('--empty') ? asked.filter((word) => word !== '--empty') : [...samples, ...asked]
const binary = electronBinary(root)

await runAll([['vite', 'build', '--config', 'vite.config.ts', '--logLevel', 'warn']])
if (binary !== undefined) {
  await runAll([
    ['vite', 'build', '--config', 'vite.main.config.ts', '--logLevel', 'warn'],
    ['vite', 'build', '--config', 'vite.preload.config.ts', '--logLevel', 'warn'],
  ])
  process.exitCode = await run(binary, [join(root, 'dist', 'main', 'start.mjs'), ...args])
} else {
  console.log("Electron's binary is not installed here: serving the same app on a loopback address")
  const { startLoopback } = await import('../main/shells/loopback/start.ts')
  await startLoopback(args)
}
