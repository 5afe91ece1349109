import { execFileSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { parse } from 'csv-parse/sync'
import type { EChartsOption } from 'echarts'
import { afterAll, describe, expect, it } from 'vitest'
import { canonicalJson } from '../../../core/ledger/index.ts'
import { chartOnPage } from '../../../main/documents/reconciliation-charts.ts'
import { reconciliationCsv } from '../../../main/documents/reconciliation-csv.ts'
import { fileStem, pairSentences, verdictSentence } from '../../../main/documents/reconciliation-words.ts'
import { reconciliationPdf } from '../../../main/documents/reconciliation.ts'
import { aReport } from '../../core/chart/a-report.ts'

const made = { at: '2026-04-02T09:30:00Z', software: { name: 'Dipledger', version: '0.1.0', core: 'c'.repeat(64) } } as const
const folder = mkdtempSync(join(tmpdir(), 'dipledger-reconciliation-'))
afterAll(() => { rmSync(folder, { recursive: true, force: true }) })

async function onDisk(report = aReport()): Promise<string> {
  const path = join(folder, 'report.pdf')
  writeFileSync(path, await reconciliationPdf(report, made))
  return path
}
const textOf = (path: string): string => execFileSync('pdftotext', ['-layout', path, '-'], { encoding: 'utf8' })

describe('the reconciliation as pages', () => {
  it('says what is outside its limit, the pair, what is missing, and what it stands on', async () => {
    const text = textOf(await onDisk())
    for (const words of [
      '2026-03-01 06:00 to 2026-04-01 06:00', 'Europe/Lisbon', 'measurement day closes 06:00', 'Outside their limits: T-101 lost 20.50 bbl, T-102 gained 19.75 bbl.',
      'LOSS OUTSIDE LIMIT', '−20.50', 'within limit', 'Not reconciled', 'T-103: no measured inventory of T-103 at the end of the period',
      'T-101, Crude oil: unbooked steps', 'T-102, Crude oil: unbooked steps', 'CPT-000001', 'aaaaaaaa aaaaaaaa', 'Dipledger 0.1.0', 'cccccccc cccccccc',
    ]) expect(text).toContain(words)
    expect(text).not.toContain('T-201, Gas oil: unbooked steps')
  })

  it('carries its figures as data, and is a sound file', async () => {
    const path = await onDisk()
    execFileSync('pdfdetach', ['-saveall', '-o', folder, path])
    expect(readFileSync(join(folder, 'reconciliation.json'), 'utf8')).toBe(canonicalJson(aReport()))
    expect(execFileSync('qpdf', ['--check', path], { encoding: 'utf8' })).toContain('No syntax or stream encoding errors found')
    expect(execFileSync('pdfinfo', [path], { encoding: 'utf8' })).toMatch(/Page size:\s+841\.89 x 595\.28/)
  })

  it('gives the same bytes for the same report', async () => {
    const [first, second] = [await reconciliationPdf(aReport(), made), await reconciliationPdf(aReport(), made)]
    expect(Buffer.compare(first, second)).toBe(0)
  })

  it('reads well when nothing is wrong, and when nothing was moved', async () => {
    const report = aReport()
    const [, , quiet] = report.tanks
    const still = quiet === undefined ? [] : [{ ...quiet, steps: [], receiptTickets: [], deliveryTickets: [], result: { ...quiet.result, percent: null } }]
    const text = textOf(await onDisk({ ...report, tanks: still, products: report.products.slice(1), oppositePairs: [], missing: [] }))
    expect(text).toContain('Every tank that could be reconciled is within its limit. Every product taken as a whole is within its limit.')
    expect(text).toContain('none moved')
    expect(text).not.toContain('Not reconciled')
  })

  it('refuses a drawing that reaches outside itself', () => {
    const option: EChartsOption = { animation: false, graphic: { elements: [{ type: 'image', style: { image: 'file:///etc/hostname', width: 10, height: 10 } }] } }
    expect(() => chartOnPage(option, 100, 100)).toThrow('outside itself')
  })
})

describe('its words', () => {
  it('tell the pair, how steady it is, and what to do', () => {
    const report = aReport()
    const [pair] = report.oppositePairs
    if (pair === undefined) throw new Error('the report has a pair')
    const sentences = pairSentences({ ...pair, losingSteps: { thatWay: 9, of: 10 }, gainingSteps: { thatWay: 8, of: 9 } }, report).join(' ')
    expect(sentences).toContain('T-101 lost 20.50 bbl of Crude oil that no ticket accounts for, and T-102 gained 19.75 bbl.')
    expect(sentences).toContain('Crude oil as a whole is within its limit')
    expect(sentences).toContain('T-101 went down in 9 of its 10 unbooked steps, T-102 up in 8 of its 9')
    expect(sentences).toContain('possible leak')
    expect(pairSentences(pair, { products: [] }).join(' ')).toContain('of CRUDE')
  })

  it('name what was not reconciled, and the file of the period', () => {
    expect(verdictSentence(aReport())).toContain('Not reconciled: T-103.')
    expect(fileStem(aReport())).toBe('reconciliation-CPT-2026-03-01-to-2026-04-01')
  })
})

describe('the reconciliation as CSV', () => {
  const lines = (report = aReport()) => parse(reconciliationCsv(report), { columns: true }) as readonly Readonly<Record<string, string>>[]

  it('has a line for each product, tank and step, with every figure as it was booked', () => {
    const read = lines()
    expect(read.map((line) => line.record)).toEqual(['product', 'product', 'tank', 'tank', 'tank', 'step', 'step', 'step', 'step'])
    expect(read[2]).toMatchObject({ code: 'T-101', unit: 'bbl', opening: '10000.00', loss_gain: '-20.50', limit: '14.00', percent_of_throughput: '-0.513', verdict: 'loss-outside-limit', receipt_tickets: 'CPT-000001' })
    expect(read[5]).toMatchObject({ code: 'T-101', step_from: '2026-03-01T06:00:00Z', step_change: '-8.25', step_cumulative: '-8.25' })
    expect(read.every((line) => line.ledger_head === 'a'.repeat(64))).toBe(true)
  })

  it.each(['=HYPERLINK("http://x","y")', '+1+1', '-1+1', '@SUM(A1)', '|calc', '\t=1', '%0A'])('keeps a spreadsheet from running %j', (source) => {
    const report = aReport()
    const tanks = report.tanks.map((tank) => ({ ...tank, result: { ...tank.result, limitSource: source } }))
    expect(lines({ ...report, tanks })[2]?.limit_source).toBe(`'${source}`)
  })
})
