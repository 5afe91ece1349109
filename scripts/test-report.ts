import { z } from 'zod'

const reportSchema = z.object({
  testResults: z.array(z.object({
    name: z.string(), status: z.string(), message: z.string().optional(),
    assertionResults: z.array(z.object({ fullName: z.string(), status: z.string() })),
  })),
})

/** What a run of the tests came to. */
export interface TestReport {
  readonly passed: number
  readonly failed: number
  readonly failures: readonly string[]
  readonly skipped: readonly string[]
}

/** Counts Vitest's JSON report. A file that could not be run at all counts as one failure. */
export function readTestReport(text: string): TestReport {
  const { testResults } = reportSchema.parse(JSON.parse(text))
  const tests = testResults.flatMap((file) => file.assertionResults.map((test) => ({ name: `${file.name}: ${test.fullName}`, status: test.status })))
  const broken = testResults.filter((file) => file.status === 'failed' && !file.assertionResults.some((test) => test.status === 'failed'))
  const named = (wanted: (status: string) => boolean): string[] => tests.filter((test) => wanted(test.status)).map((test) => test.name)
  const failures = [...named((status) => status === 'failed'), ...broken.map((file) => `${file.name}: ${file.message ?? 'could not be run'}`)]
  return {
    passed: named((status) => status === 'passed').length,
    failed: failures.length,
    failures,
    skipped: named((status) => status !== 'passed' && status !== 'failed'),
  }
}
