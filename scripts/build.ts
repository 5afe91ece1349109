import { runAll } from './run.ts'

/** Builds window, main process and preload into dist/. */
await runAll([
  ['vite', 'build', '--config', 'vite.config.ts', '--logLevel', 'warn'],
  ['vite', 'build', '--config', 'vite.main.config.ts', '--logLevel', 'warn'],
  ['vite', 'build', '--config', 'vite.preload.config.ts', '--logLevel', 'warn'],
])
