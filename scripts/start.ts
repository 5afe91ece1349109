import { join } from 'node:path'
import { endWithNpm } from './end-with-npm.ts'
import { electronBinary, fetchElectron, hasDisplay } from './electron-binary.ts'
import { root, run, runAll } from './run.ts'

/**
 * Builds the program and opens it on the sample terminal: in its own window, or where that cannot be, in a browser.
 * `npm start -- --empty --folder PATH` opens a ledger of one's own.
 */
const asked = process.argv.slice(2)
const args = asked.includes('--empty') ? asked.filter((word) => word !== '--empty') : ['--samples', join(root, 'samples'), ...asked]
/** A window that fails this early was never open [ms]. */
const STILLBORN = 10_000

endWithNpm()
await runAll([['vite', 'build', '--config', 'vite.config.ts', '--logLevel', 'warn']])
const whyNot = await openDesktop()
if (whyNot !== undefined) {
  console.log(`${whyNot}: serving the same app on a loopback address`)
  const { startLoopback } = await import('../main/shells/loopback/start.ts')
  await startLoopback(args)
}

/** Runs the desktop program to its end; or says why there is none. */
async function openDesktop(): Promise<string | undefined> {
  const display = hasDisplay(process.platform, process.env)
  const binary = electronBinary(root) ?? (display ? await fetchElectron(root) : undefined)
  if (binary === undefined) return "Electron's binary is not installed here"
  if (!display) return 'There is no display here for a window'
  await runAll([
    ['vite', 'build', '--config', 'vite.main.config.ts', '--logLevel', 'warn'],
    ['vite', 'build', '--config', 'vite.preload.config.ts', '--logLevel', 'warn'],
  ])
  const started = Date.now()
  process.exitCode = await run(binary, [join(root, 'dist', 'main', 'start.mjs'), ...args])
  return process.exitCode !== 0 && Date.now() - started < STILLBORN ? 'Electron could not open its window here' : undefined
}
