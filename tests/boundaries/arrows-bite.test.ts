import { spawnSync } from 'node:child_process'
import { copyFileSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { DEPENDENCY_RULES } from './build-tools.ts'
import { ROOT } from './sources-tree.ts'

/** A small house in which each file breaks one rule on where an arrow may point. */
const BREAKS: readonly (readonly [rule: string, file: string, line: string])[] = [
  ['refusal-looks-back-only', 'core/refusal/x.ts', "export * from '../units/index.ts'"],
  ['tank-looks-back-only', 'core/tank/x.ts', "export * from '../ledger/index.ts'"],
  ['folders-meet-at-index', 'core/quantity/x.ts', "export * from '../tank/inner.ts'"],
  ['core-folders-are-in-the-flow', 'core/gauge/x.ts', "export * from '../elsewhere/index.ts'"],
  ['core-is-alone', 'core/units/x.ts', "export * from '../../main/store/index.ts'"],
  ['core-has-no-node', 'core/ticket/x.ts', "export { readFileSync } from 'node:fs'"],
  ['core-has-few-libraries', 'core/transfer/x.ts', "export { Kysely } from 'kysely'"],
  ['core-takes-only-types-of-echarts', 'core/chart/x.ts', "export { init } from 'echarts'"],
  ['others-enter-core-by-index', 'main/signing/x.ts', "export * from '../../core/tank/inner.ts'"],
  ['main-does-not-see-the-window', 'main/store/x.ts', "export * from '../../renderer/app/route.ts'"],
  ['shells-are-transport', 'main/documents/x.ts', "export * from '../shells/data-folder.ts'"],
  ['contracts-see-core-only', 'main/operations/contracts/x.ts', "export * from '../../store/index.ts'"],
  ['window-sees-contracts-only', 'renderer/parts/x.ts', "export * from '../../main/store/index.ts'"],
  ['window-has-no-node', 'renderer/charts/x.ts', "export { readFileSync } from 'node:fs'"],
  ['no-circles', 'scripts/x.ts', "export * from './y.ts'"],
  ['no-unresolved', 'scripts/z.ts', "export * from './nowhere.ts'"],
]
const OTHERS: readonly (readonly [file: string, line: string])[] = [
  ...['core/units/index.ts', 'core/ledger/index.ts', 'core/tank/inner.ts', 'core/elsewhere/index.ts', 'main/store/index.ts', 'main/shells/data-folder.ts', 'renderer/app/route.ts']
    .map((file) => [file, 'export const here = true'] as const),
  ['scripts/y.ts', "export * from './x.ts'"],
  ['tests/tsconfig.json', '{ "compilerOptions": { "allowImportingTsExtensions": true, "noEmit": true } }'], ['tests/here.ts', 'export const here = true'],
]

describe('each rule on dependencies stops what it is there for', () => {
  const house = mkdtempSync(join(tmpdir(), 'dipledger-arrows-'))
  let told = ''

  beforeAll(() => {
    for (const [file, line] of [...BREAKS.map(([, file, line]) => [file, line] as const), ...OTHERS]) {
      mkdirSync(dirname(join(house, file)), { recursive: true })
      writeFileSync(join(house, file), `${line}\n`)
    }
    copyFileSync(join(ROOT, '.dependency-cruiser.cjs'), join(house, '.dependency-cruiser.cjs'))
    symlinkSync(join(ROOT, 'node_modules'), join(house, 'node_modules'), 'junction')
    const [tool, ...parameters] = DEPENDENCY_RULES
    const { stdout, stderr } = spawnSync(process.execPath, [join(ROOT, tool), ...parameters], { cwd: house, encoding: 'utf8' })
    told = `${stdout}${stderr}`
  }, 60_000)
  afterAll(() => rmSync(house, { recursive: true, force: true }))

  it.each(BREAKS)('%s in %s', (rule, file) => {
    expect(told).toContain(`error ${rule}: ${file}`)
  })
})
