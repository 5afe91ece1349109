import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { FINDING_CODES, wording, type Finding } from '../../core/refusal/index.ts'
import { sourceKeyOf, SOURCES } from '../../core/sources.ts'
import type { Answer, SpokenFinding } from '../../main/operations/answer.ts'
import { cases, inputOf, type Case } from './case.ts'
import { closeBenches, workbench } from './workbench.ts'

const CASES = cases()
const README = join(import.meta.dirname, 'README.md')
const answered = new Map<string, string>()

/** The findings of an answer: of its refusal, or those that it prints and goes on. */
function findingsOf(answer: Answer, one: Case): readonly Finding[] {
  if (one.shows === undefined && 'refused' in answer) return answer.refused.findings.map(({ message, ...finding }) => finding)
  if (one.shows === 'exceptions' && 'result' in answer) return (answer.result as { exceptions: readonly SpokenFinding[] }).exceptions.map(({ message, ...finding }) => finding)
  throw new Error(`no such finding: ${JSON.stringify(answer).slice(0, 500)}`)
}

async function provoke(one: Case): Promise<readonly Finding[]> {
  const bench = await workbench(one.ledger)
  for (const step of one.given ?? []) {
    const answer = await bench.call(step.operation, inputOf(step), step.at)
    if (step.refused === true ? !('refused' in answer) : !('result' in answer)) throw new Error(`given: ${step.operation}: ${JSON.stringify(answer).slice(0, 500)}`)
  }
  return findingsOf(await bench.call(one.do.operation, inputOf(one.do), one.do.at), one)
}

afterAll(closeBenches)

describe('each refusal has a file that provokes it', () => {
  it('no code is without one, and no file without a code', () => {
    expect(CASES.map(([name]) => name)).toEqual([...FINDING_CODES].sort())
  })

  it.each(CASES)('%s', async (name, one) => {
    const findings = await provoke(one)
    expect(findings).toEqual(one.answer)
    expect(findings.map((finding) => finding.code)).toContain(name)
    for (const finding of findings) {
      expect(Object.keys(SOURCES)).toContain(sourceKeyOf(finding.clause))
      const sentence = wording(finding)
      expect(sentence).toContain(finding.limit)
      expect(sentence).toContain(finding.path)
      if (finding.code === name) answered.set(name, sentence)
    }
  }, 60_000)
})

describe('the table of refusals', () => {
  it('in README.md is what these files give (DIPLEDGER_WRITE_TABLE=1 writes it)', () => {
    const rows = CASES.map(([name, one]) => `| \`${name}\` | ${one.says} | ${answered.get(name)?.replaceAll('|', '\\|') ?? ''} |`)
    const table = ['# Refusals', '', 'Made from the files in `cases/`; each is run by `refusals.test.ts`.', '', '| code | provoked by | what the person reads |', '|---|---|---|', ...rows, ''].join('\n')
    if (process.env['DIPLEDGER_WRITE_TABLE'] === '1') writeFileSync(README, table)
    expect(readFileSync(README, 'utf8')).toBe(table)
  })
})
