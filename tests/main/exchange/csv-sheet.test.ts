import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import { accepted } from '../../../core/refusal/index.ts'
import { readSheet, shaped, yesOrNo, type Column, type Sheet } from '../../../main/exchange/csv-sheet.ts'

const COLUMNS: readonly Column[] = [
  { name: 'code', at: 'code' }, { name: 'level', at: 'gauge.level' }, { name: 'remarks', at: 'gauge.remarks', optional: true },
  { name: 'insulated', at: 'insulated', read: yesOrNo },
]
const sheet = (text: string): Sheet => readSheet({ 'tanks.csv': text }, 'tanks.csv', COLUMNS)
const found = ({ findings, lines }: Sheet): readonly string[] => [...findings, ...lines.flatMap((line) => line.findings)].map((finding) => `${finding.path}: ${finding.code}`)

describe('a sheet', () => {
  it('puts cells into their fields, whatever the order of the columns', () => {
    const [line] = sheet('insulated,level,code\nyes,"12.3 m",T-1\n').lines
    expect(line).toMatchObject({ path: 'tanks.csv line 2', value: { code: 'T-1', gauge: { level: '12.3 m' }, insulated: true }, findings: [] })
  })

  it('leaves out what is empty, and misses what must stand', () => {
    const read = sheet('code,level,remarks,insulated\nT-1,,,no\n,4 m,"wet, windy",no\n')
    expect(read.lines.map((line) => line.value)).toEqual([{ code: 'T-1', insulated: false }, { gauge: { level: '4 m', remarks: 'wet, windy' }, insulated: false }])
    expect(found(read)).toEqual(['tanks.csv line 2, level: missing-value', 'tanks.csv line 3, code: missing-value'])
  })

  it('tells wrong headings by name, all of them', () => {
    expect(sheet('code,levle,code,insulated\nT-1,4 m,T-1,no\n').findings.map((finding) => finding.limit)).toEqual([
      '“levle” is no column here; there are code, level, remarks, insulated', 'the column “code” once only', 'it lacks the column “level”',
    ])
    expect(found(sheet(''))).toHaveLength(3)
  })

  it('tells wrong cells by line and column', () => {
    expect(found(sheet('code,level,insulated\nT-1,4 m,perhaps\nT-2,5 m,no,more\nT-3,"6 m,yes'))).toEqual(['tanks.csv line 4: malformed-input'])
    expect(found(sheet('code,level,insulated\nT-1,4 m,perhaps\nT-2,5 m,no,more\n'))).toEqual(['tanks.csv line 2, insulated: unreadable-value', 'tanks.csv line 3: malformed-input'])
  })

  it('counts lines as an editor does, quoted line breaks and blank lines included', () => {
    expect(sheet('\ncode,level,remarks,insulated\n\nT-1,4 m,"two\nlines",no\nT-2,5 m,,no\n').lines.map((line) => line.path)).toEqual(['tanks.csv line 5', 'tanks.csv line 6'])
  })
})

describe('a finding about a field', () => {
  const schema = z.strictObject({ code: z.string().regex(/^T-/), gauge: z.strictObject({ level: z.string() }), insulated: z.boolean() })

  it('is told at the cell that filled it', () => {
    const [line] = sheet('code,level,remarks,insulated\nX-1,4 m,wet,no\n').lines
    const outcome = line === undefined ? accepted(null) : shaped(line, schema)
    expect(outcome.ok ? [] : outcome.findings.map((finding) => finding.path)).toEqual(['tanks.csv line 2, code', 'tanks.csv line 2, remarks'])
  })

  it('is told at the field it lies in, or the first that lies in it, or the line', () => {
    const [line] = sheet('code,level,insulated\nT-1,4 m,no\n').lines
    const at = (path: string): string | undefined => line?.placed({ code: 'out-of-range', path, value: '', limit: '', clause: 'HOUSE samples' }).path
    expect([at('gauge.level.unit'), at('gauge'), at('roof.mass'), at('tables/T-1.csv line 7')]).toEqual(['tanks.csv line 2, level', 'tanks.csv line 2, level', 'tanks.csv line 2, roof.mass', 'tables/T-1.csv line 7'])
  })
})
