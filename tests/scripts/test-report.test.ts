import { describe, expect, it } from 'vitest'
import { readTestReport } from '../../scripts/test-report.ts'

const file = (name: string, status: string, tests: readonly (readonly [string, string])[], message = '') =>
  ({ name, status, message, assertionResults: tests.map(([fullName, state]) => ({ fullName, status: state })) })

function report(...testResults: readonly object[]) {
  return readTestReport(JSON.stringify({ testResults }))
}

describe('the count of a run', () => {
  it('tells passed, failed and skipped apart', () => {
    expect(report(file('a.test.ts', 'failed', [['one', 'passed'], ['two', 'failed']]), file('b.test.ts', 'passed', [['three', 'passed'], ['four', 'skipped'], ['five', 'pending']])))
      .toEqual({ passed: 2, failed: 1, failures: ['a.test.ts: two'], skipped: ['b.test.ts: four', 'b.test.ts: five'] })
  })

  it('takes a file that could not be run at all as a failure', () => {
    expect(report(file('broken.test.ts', 'failed', [], 'Cannot find module'))).toEqual({ passed: 0, failed: 1, failures: ['broken.test.ts: Cannot find module'], skipped: [] })
  })
})
