import { runAll } from './run.ts'

/** Types of all four worlds, house rules, and where arrows may point. */
await runAll([
  ['tsc', '-p', 'core'],
  ['tsc', '-p', 'main'],
  ['tsc', '-p', 'renderer'],
  ['tsc', '-p', 'tests'],
  ['eslint', '--max-warnings', '0', '.'],
  ['depcruise', '--config', '.dependency-cruiser.cjs', 'core', 'main', 'renderer', 'scripts'],
])
