import { describe, expect, it } from 'vitest'
import { refuseTaken, tankTimesOf, type MovementInTime } from '../../../core/ledger/index.ts'
import { adjustmentPosting, aTicket, chained, inventoryPosting, lineFillPosting, ticketPosting } from '../../support/postings.ts'

const other: MovementInTime = { seq: 7, kind: 'receipt', number: 'CPT-000001', openedAt: '2026-03-14T06:00:00Z', closedAt: '2026-03-14T12:00:00Z', openingNsv: '100.000', voidedBy: null, correctedBy: null }
const taken = (opened: string, closed: string, parts: Partial<MovementInTime> = {}, entry?: number) => refuseTaken({ opened: `2026-03-14T${opened}Z`, closed: `2026-03-14T${closed}Z` }, [{ ...other, ...parts }], 'ticket.opening.at', entry)

describe('tank time', () => {
  it.each([
    ['within', '07:00:00', '08:00:00', true], ['around', '05:00:00', '13:00:00', true], ['across the beginning', '05:00:00', '06:00:00.001', true], ['across the end', '11:59:59.999', '13:00:00', true],
    ['an instant within', '07:00:00', '07:00:00', true], ['up to the beginning', '05:00:00', '06:00:00', false], ['from the end on', '12:00:00', '13:00:00', false],
    ['an instant at an end', '12:00:00', '12:00:00', false], ['backwards', '11:00:00', '07:00:00', false],
  ])('%s', (_what, opened, closed, refused) => {
    expect(taken(opened, closed).map(({ code, limit }) => [code, limit])).toEqual(refused ? [['gauge-overlaps-ticket', 'CPT-000001 (2026-03-14T06:00:00Z to 2026-03-14T12:00:00Z)']] : [])
  })

  it('is free again when what took it was voided or taken back, and where nothing was gauged', () => {
    for (const parts of [{ voidedBy: 9 }, { correctedBy: 9 }, { openingNsv: '' }]) expect(taken('07:00:00', '08:00:00', parts)).toEqual([])
  })

  it('is judged by what stood before an entry', () => {
    expect(taken('07:00:00', '08:00:00', { voidedBy: 9 }, 8)).toHaveLength(1)
    expect(taken('07:00:00', '08:00:00', { voidedBy: 9 }, 10)).toEqual([])
    expect(taken('07:00:00', '08:00:00', {}, 7)).toEqual([])
  })

  it('names a stock movement by its kind and reference', () => {
    expect(taken('07:00:00', '08:00:00', { kind: 'tank-to-tank', number: 'MOV-7' })[0]).toMatchObject({ limit: expect.stringContaining('tank to tank MOV-7 (entry 7) (') })
  })

  it('is taken by tickets and gauged legs alone', () => {
    const version = { code: 'T-101', seq: 2, hash: '0'.repeat(64) }
    const entries = chained([ticketPosting(aTicket({ number: 'CPT-000001' }), new Uint8Array([1])), adjustmentPosting('1.000'), inventoryPosting('100.000', '2026-03-17T06:00:00Z', version, { ...version, code: 'CRUDE' }), lineFillPosting({ ...version, code: 'CRUDE' })])
    expect(entries.map((entry) => tankTimesOf(entry))).toEqual([[{ tank: 'T-101', opened: '2026-03-14T06:10:00Z', closed: '2026-03-14T18:40:00Z' }], [], [], []])
  })
})
