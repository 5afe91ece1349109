import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { anOpeningGauge } from '../../support/snapshots.ts'
import { aTerminalLedger, aWorld, type World } from '../../support/world.ts'

let template: Awaited<ReturnType<typeof aTerminalLedger>>
let world: World
beforeAll(async () => { template = await aTerminalLedger() })
afterAll(() => template.remove())
beforeEach(async () => { world = await aWorld({ copyOf: template.path }) })
afterEach(() => world.close())

const adjustment = { tank: 'T-101', effectiveAt: '2026-03-14T20:00:00Z', nsv: '-1.250 m3', reason: 'Sample returned to the tank of the laboratory', approvedBy: 'M. Duarte' }

async function codesOf(name: string, input: unknown): Promise<readonly string[]> {
  const answer = await world.call(name, input)
  if (!('refused' in answer)) throw new Error(`not refused: ${JSON.stringify(answer).slice(0, 300)}`)
  return answer.refused.findings.map((finding) => `${finding.path} ${finding.code}`)
}

describe('a measured inventory', () => {
  it('is entered with its worksheet and becomes the last gauge of its tank', async () => {
    const { worksheet } = await world.ask('record-inventory', { snapshot: anOpeningGauge(), by: 'M. Duarte' })
    // 200 m³ per metre: 4.000 m is 800.000 m³, and 50 mm of water is 10.000 m³
    expect(worksheet.quantity).toMatchObject({ tov: { value: '800.000', unit: 'm3' }, fw: { value: '10.000', unit: 'm3' } })
    expect((await world.ask('terminal', {})).lastGauges).toMatchObject([{ tank: 'T-101', what: 'inventory', levelMm: '4000', waterMm: '50', quantity: worksheet.quantity }])
  })

  it('is refused with every finding of its sheet, and when it lies in the future', async () => {
    expect(await codesOf('record-inventory', { snapshot: anOpeningGauge({ waterCut: 'some', sedimentAndWater: 'little' }), by: 'x' }))
      .toEqual(['snapshot.waterCut unreadable-value', 'snapshot.sedimentAndWater unreadable-value'])
    expect(await codesOf('record-inventory', { snapshot: anOpeningGauge({ at: '2026-04-01T00:00:00Z' }), by: 'x' })).toEqual(['snapshot.at time-in-future'])
    expect(await codesOf('record-inventory', { snapshot: anOpeningGauge({ tank: 'T-7', product: 'TAR' }), by: 'x' })).toEqual(['snapshot.tank unknown-tank', 'snapshot.product unknown-product'])
  })
})

describe('an adjustment', () => {
  it('is booked as it was approved', async () => {
    const { seq } = await world.ask('post-adjustment', adjustment)
    expect((await world.context.store?.entry(seq))?.body).toEqual({ ...adjustment, product: 'CRUDE', nsv: { value: '-1.250', unit: 'm3' } })
  })

  it.each([
    ['another unit', { nsv: '-7.86 bbl' }, 'nsv unit-not-accepted'],
    ['more digits than the book has', { nsv: '1.2345 m3' }, 'nsv out-of-range'],
    ['nothing', { nsv: '0 m3' }, 'nsv out-of-range'],
    ['no number', { nsv: 'a little' }, 'nsv unreadable-value'],
    ['no reason', { reason: '  ' }, 'reason reason-missing'],
    ['another tank', { tank: 'T-9' }, 'tank unknown-tank'],
    ['a time to come', { effectiveAt: '2027-01-01T00:00:00Z' }, 'effectiveAt time-in-future'],
  ])('is refused with %s', async (_what, change, expected) => {
    expect(await codesOf('post-adjustment', { ...adjustment, ...change })).toContain(expected)
  })

  it('is refused for everything that is wrong with it at once', async () => {
    expect(await codesOf('post-adjustment', { ...adjustment, nsv: 'x', reason: '', effectiveAt: 'x' })).toEqual(['effectiveAt unreadable-value', 'nsv unreadable-value', 'reason reason-missing'])
  })
})
