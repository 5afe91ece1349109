import { parse } from 'csv-parse/sync'
import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import { registerCsv } from '../../../renderer/register/register-csv.ts'
import { aLine } from './a-line.ts'

const rowsOf = (csv: string) => z.array(z.record(z.string(), z.string())).parse(parse(csv, { columns: true }))

describe('the register as CSV', () => {
  it('keeps every digit, and the unit beside it', () => {
    expect(rowsOf(registerCsv([aLine()]))[0]).toMatchObject({ ticket: 'CPT-000007', 'net standard volume': '1090.918', 'volume unit': 'm3', 'weight in air': '921.004', 'closing gauge (UTC)': '2026-03-14T18:40:00Z' })
  })

  it('carries void and replacement; a reason with commas, quotes and line breaks comes back as it was', () => {
    const reason = 'tape misread, "12" for "13"\nseen next day'
    const rows = rowsOf(registerCsv([aLine({ voided: { seq: 40, at: '2026-03-15T08:00:00Z', reason }, replacedBy: 'CPT-000008' })]))
    expect(rows[0]).toMatchObject({ reason, 'replaced by': 'CPT-000008', 'voided (UTC)': '2026-03-15T08:00:00Z' })
  })

  it('disarms what a spreadsheet would take for a formula', () => {
    expect(rowsOf(registerCsv([aLine({ voided: { seq: 40, at: '2026-03-15T08:00:00Z', reason: '=1+1' } })]))[0]?.['reason']).toBe("'=1+1")
  })
})
