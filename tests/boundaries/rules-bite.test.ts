import { ESLint } from 'eslint'
import { describe, expect, it } from 'vitest'
import { ROOT } from './sources-tree.ts'

/** A rule that never fires is no rule: each one is shown a line that breaks it. */
const BREAKS: readonly (readonly [rule: string, file: string, line: string])[] = [
  ['no-restricted-syntax', 'core/quantity/x.ts', 'const a = (1.234).toFixed(2)'],
  ['no-restricted-syntax', 'main/store/x.ts', 'const a = Math.round(1.5)'],
  ['no-restricted-syntax', 'renderer/parts/x.tsx', 'const a = (1.5).toPrecision(2)'],
  ['no-restricted-syntax', 'core/tank/x.ts', 'const a = d.toDecimalPlaces(2)'],
  ['no-restricted-syntax', 'core/ledger/x.ts', 'const a = new Date()'],
  ['no-restricted-syntax', 'core/ledger/x.ts', 'const a = Date.now()'],
  ['no-restricted-syntax', 'core/gauge/x.ts', 'const a = Math.random()'],
  ['no-restricted-globals', 'core/gauge/x.ts', 'const a = process.env'],
  ['max-lines', 'main/store/x.ts', Array.from({ length: 260 }, (_, i) => `const a${i} = ${i}`).join('\n')],
  ['jsdoc/require-jsdoc', 'core/tank/x.ts', 'export function shellArea() { return 1 }'],
  ['@typescript-eslint/no-explicit-any', 'main/store/x.ts', 'const a: any = 1'],
  ['no-restricted-syntax', 'tests/core/x.test.ts', "it.skip('x', () => {})"],
]

describe('each lint rule stops what it is there for', () => {
  const eslint = new ESLint({ cwd: ROOT })
  it.each(BREAKS)('%s in %s', async (rule, filePath, line) => {
    const [result] = await eslint.lintText(line, { filePath })
    expect(result?.messages.filter((message) => message.severity === 2).map((message) => message.ruleId)).toContain(rule)
  })
})
