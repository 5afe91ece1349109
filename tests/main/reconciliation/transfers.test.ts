import { parse } from 'csv-parse/sync'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { Decimal } from '../../../core/units/index.ts'
import type { EntryOf } from '../../../core/ledger/index.ts'
import type { OutputOf } from '../../../main/operations/contracts/index.ts'
import { SAMPLE_PASSPHRASE, sampleFiles, SEPTEMBER } from '../../support/sample-folder.ts'
import { aWorld, type World } from '../../support/world.ts'

type Report = OutputOf<'reconcile'>
type Inventory = EntryOf<'inventory-measured'>
const by = 'Mara Teague'
let world: World
let before: Report
beforeAll(async () => {
  world = await aWorld({ now: () => '2026-11-25T09:00:00Z' })
  await world.ask('import-terminal', { files: await sampleFiles(), by: 'sample data', passphrase: SAMPLE_PASSPHRASE, withMonth: true })
  before = await world.ask('reconcile', SEPTEMBER)
}, 240_000)
afterAll(() => world.close())

const tankOf = (report: Report, tank: string): Report['tanks'][number] => {
  const found = report.tanks.find((one) => one.tank === tank)
  if (found === undefined) throw new Error(`${tank} was not reconciled`)
  return found
}

type Snapshot = EntryOf<'inventory-measured'>['body']['snapshot']

/** Three days on which nothing but the valve moved gasoline in both tanks, and the gauges at their ends. */
async function threeQuietDays() {
  const [loses, gains] = [tankOf(before, 'TK-201').steps.at(-1), tankOf(before, 'TK-202').steps.at(-1)]
  if (loses?.fromWhat !== 'inventory' || gains?.fromWhat.startsWith('closing of ') !== true) throw new Error('the sample month ends otherwise')
  const inventories: readonly Inventory[] = await world.context.store?.entriesOfKind('inventory-measured') ?? []
  const measured = (tank: string, at: string): Snapshot => {
    const found = inventories.find(({ body: { snapshot } }) => snapshot.tank === tank && snapshot.at === at)
    if (found === undefined) throw new Error(`no inventory of ${tank} at ${at}`)
    return found.body.snapshot
  }
  const { ticket } = await world.ask('read-ticket', { number: gains.fromWhat.replace('closing of ', '') })
  return {
    step: loses, gained: gains.change.value,
    from: { opening: measured('TK-201', loses.from), closing: measured('TK-201', loses.to) }, to: { opening: ticket.closing, closing: measured('TK-202', gains.to) },
  }
}

describe('gasoline that passed a valve, entered as a movement', () => {
  it('is no unbooked step any more, and stands apart from adjustments', async () => {
    const { step, gained, from, to } = await threeQuietDays()
    await world.ask('post-stock-movement', {
      movement: { kind: 'tank-to-tank', from, to },
      reason: 'The valve between the two was found passing', reference: 'VALVE-1', by,
    })
    const after = await world.ask('reconcile', SEPTEMBER)
    const [was, is] = [tankOf(before, 'TK-201'), tankOf(after, 'TK-201')]
    expect(is.steps.some((one) => one.from === step.from && one.to === step.to)).toBe(false)
    expect(is.steps).toHaveLength(was.steps.length - 1)
    expect(is.steps.map(({ change }) => change.value).toSorted()).toEqual(was.steps.filter((one) => one !== step).map(({ change }) => change.value).toSorted())
    expect(is.result.transfersOut.value).toBe(step.change.value.slice(1))
    expect([is.result.transfersIn.value, is.result.adjustments.value]).toEqual(['0.00', '0.00'])
    expect(is.transfers).toMatchObject([{ kind: 'tank-to-tank', number: 'VALVE-1', nsv: step.change }])
    // measured − book moves by exactly what was booked; throughput, and with it the limit, stays as it was
    expect(new Decimal(is.result.lossGain.value).minus(was.result.lossGain.value).eq(new Decimal(is.result.transfersOut.value))).toBe(true)
    for (const figure of ['opening', 'receipts', 'deliveries', 'measuredClosing', 'throughput', 'limit'] as const) expect(is.result[figure], figure).toEqual(was.result[figure])
    expect(tankOf(after, 'TK-202').result.transfersIn.value).toBe(gained)
  })

  it('makes up the equation of the trade, line by line', async () => {
    const { result } = tankOf(await world.ask('reconcile', SEPTEMBER), 'TK-201')
    const line = (symbol: string): string => result.worksheet.find((one) => one.symbol === symbol)?.value ?? ''
    expect(result.worksheet.find(({ symbol }) => symbol === 'BOOK')?.formula).toBe('OPEN + REC + TIN − DEL − TOUT + ADJ')
    expect(new Decimal(line('OPEN')).plus(line('REC')).plus(line('TIN')).minus(line('DEL')).minus(line('TOUT')).plus(line('ADJ')).eq(line('BOOK'))).toBe(true)
    expect(new Decimal(line('CLOSE')).minus(line('BOOK')).eq(line('LG'))).toBe(true)
  })

  it('stands in the CSV and in the PDF', async () => {
    const csv = Buffer.from((await world.ask('reconciliation-document', { ...SEPTEMBER, format: 'csv' })).file, 'base64').toString('utf8')
    const [head, ...lines] = parse(csv) as readonly (readonly string[])[]
    const row = lines.find((cells) => cells[0] === 'tank' && cells[1] === 'TK-201')
    const at = (column: string): string | undefined => row?.[head?.indexOf(column) ?? -1]
    expect([at('transfers_out'), at('transfers_in'), at('transfers')]).toEqual(['30.13', '0.00', 'VALVE-1'])
    expect((await world.ask('reconciliation-document', { ...SEPTEMBER, format: 'pdf' })).type).toBe('application/pdf')
  })
})

describe('a tank that was regraded in the month', () => {
  it('is reconciled under each of its names, neither with a loss that the regrade made', async () => {
    const was = tankOf(before, 'TK-302')
    const last = (await world.context.store?.entriesOfKind('inventory-measured') ?? []).find(({ body: { snapshot } }) => snapshot.tank === 'TK-302' && snapshot.at === was.closingAt)
    if (last === undefined) throw new Error('no inventory of TK-302')
    const base = (await world.ask('terminal', {})).products.find(({ code }) => code === 'DIESEL')
    if (base === undefined) throw new Error('no diesel')
    await world.ask('set-product', { product: { ...base, code: 'HEATING', name: 'Heating oil' }, effectiveFrom: '2026-08-15T07:00:00Z', by })
    await world.ask('set-limit', { limit: { product: 'HEATING', percent: '0.12 %', fixed: '2 m3', base: 'deliveries', source: 'Terminal agreement' }, effectiveFrom: '2026-08-15T07:00:00Z', by })
    // half an hour after the last gauge of September nothing had moved
    const at = new Date(Date.parse(was.closingAt) + 1_800_000).toISOString().replace('.000Z', 'Z')
    await world.ask('post-stock-movement', { movement: { kind: 'regrade', gauge: { ...last.body.snapshot, at }, to: { product: 'HEATING' } }, reason: 'Sold as heating oil', by })
    const later = new Date(Date.parse(at) + 1_800_000).toISOString().replace('.000Z', 'Z')
    await world.ask('record-inventory', { snapshot: { ...last.body.snapshot, product: 'HEATING', at: later }, by })
    const longer = await world.ask('reconcile', { from: SEPTEMBER.from, to: later })
    const both = longer.tanks.filter(({ tank }) => tank === 'TK-302').toSorted((a, b) => (a.product < b.product ? -1 : 1))
    expect(longer.missing).toEqual([])
    expect(both.map(({ product, result }) => [product, result.opening.value, result.transfersIn.value, result.transfersOut.value, result.measuredClosing.value])).toEqual([
      ['DIESEL', was.result.opening.value, '0.000', last.body.worksheet.quantity.nsv.value, '0.000'],
      ['HEATING', '0.000', last.body.worksheet.quantity.nsv.value, '0.000', last.body.worksheet.quantity.nsv.value],
    ])
    expect(both[0]?.result.lossGain).toEqual(was.result.lossGain)
    expect(both[1]?.result.lossGain.value).toBe('0.000')
    // the month that ended before the regrade is as it was, although its record reaches beyond its end
    expect((await world.ask('reconcile', SEPTEMBER)).tanks.filter(({ tank }) => tank === 'TK-302')).toEqual([was])
  })
})
