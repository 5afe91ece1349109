import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { canonicalJson, type ClosingCheck, type Seal } from '../../../core/ledger/index.ts'
import type { InputOf, OutputOf } from '../../../main/operations/contracts/index.ts'
import { signText } from '../../../main/signing/index.ts'
import { atBase } from '../../core/transfer/stock-examples.ts'
import { APRIL, closing, MARCH } from '../../support/periods.ts'
import { aProduct } from '../../support/snapshots.ts'
import { aTank } from '../../support/tanks.ts'
import { aReceipt } from '../../support/tickets.ts'
import { aTerminalLedger, aWorld, PASSPHRASE, type World } from '../../support/world.ts'

/**
 * T-101 holds 200 m³ a metre, and everything is gauged at base conditions without water, so that the net standard volume is
 * the level times 200: 4.000 m are 800 m³.
 */
const by = 'M. Duarte'
const reason = 'The gauges are those of another day'
const MAY = { name: '2026-05', from: APRIL.to, to: '2026-06-01T05:00:00Z' } as const
let template: Awaited<ReturnType<typeof aTerminalLedger>>
let world: World
beforeAll(async () => { template = await aTerminalLedger() })
afterAll(() => template.remove())
beforeEach(async () => {
  world = await aWorld({ copyOf: template.path, now: () => '2026-06-03T09:00:00Z' })
  await world.ask('open-period', { ...MARCH, by })
  await world.ask('open-period', { ...APRIL, by })
  await world.ask('open-period', { ...MAY, by })
})
afterEach(() => world.close())

const gauge = (at: string, level: string, product = 'CRUDE', tank = 'T-101') => atBase(tank, product, at, level, '845.3')
const measure = (at: string, level: string, product?: string, tank?: string) => world.ask('record-inventory', { snapshot: gauge(at, level, product, tank), by })
const receipt = (opening: readonly [string, string], closed: readonly [string, string], ticket: Partial<InputOf<'post-ticket'>['ticket']> = {}, rest: Parameters<typeof aReceipt>[1] = {}) =>
  world.ask('post-ticket', aReceipt({ opening: gauge(...opening), closing: gauge(...closed), ...ticket }, rest))
type Report = OutputOf<'reconcile'>
const reconciled = ({ from, to }: { readonly from: string; readonly to: string }): Promise<Report> => world.ask('reconcile', { from, to })
/** Figures, gauges, tickets and steps; not where the ledger ends, nor what is said of late corrections. */
const standsAs = ({ tanks, products, oppositePairs, missing }: Report) => ({ tanks, products, oppositePairs, missing })
/** The lines of the report, but for where the ledger ends. */
const printed = async ({ from, to }: { readonly from: string; readonly to: string }): Promise<readonly string[]> =>
  Buffer.from((await world.ask('reconciliation-document', { from, to, format: 'csv' })).file, 'base64').toString('utf8').split(/\r?\n/).map((line) => line.replace(/,\d+,[0-9a-f]{64}$/, ''))
const lossGain = (report: Report, tank = 'T-101'): string | undefined => report.tanks.find((one) => one.tank === tank)?.result.lossGain.value
const close = async ({ name }: { readonly name: string }): Promise<void> => {
  const { checks } = await world.ask('closing-checks', { period: name })
  await world.ask('close-period', { ...closing(name), signOffs: checks.filter(({ holds }) => !holds).map(({ check }) => ({ check, reason: 'Known' })) })
}
const whole = async (): Promise<void> => { expect(await world.ask('verify-ledger', {})).toMatchObject({ whole: true, differences: [] }) }

describe('the reconciliation of a closed month', () => {
  it('keeps its inventory when what held a nearer one back is voided in the next', async () => {
    await measure(MARCH.from, '4.000 m')
    await measure('2026-04-01T03:00:00Z', '4.000 m')
    await measure('2026-04-01T05:40:00Z', '4.000 m')
    const { number } = await receipt(['2026-04-01T05:30:00Z', '4.000 m'], ['2026-04-01T07:30:00Z', '9.000 m'])
    await measure(APRIL.to, '4.000 m')
    await close(MARCH)
    const was = await reconciled(MARCH)
    expect(was.tanks[0]?.closingAt).toBe('2026-04-01T03:00:00Z')
    await world.ask('void-ticket', { number, reason, by })
    expect(standsAs(await reconciled(MARCH))).toEqual(standsAs(was))
    // April goes on from there: 800 − 800
    expect((await reconciled(APRIL)).tanks[0]).toMatchObject({ openingAt: '2026-04-01T03:00:00Z', result: { opening: { value: '800.000' }, lossGain: { value: '0.000' } } })
    await whole()
  })

  it('keeps what it counted between its end and its inventory; what becomes of that counts in the month that is open', async () => {
    await measure(MARCH.from, '4.000 m')
    // 100 m³ came in after the end of March and before the inventory that closes it: 800 + 100 = 900
    const { number } = await receipt(['2026-04-01T05:05:00Z', '4.000 m'], ['2026-04-01T05:30:00Z', '4.500 m'])
    await measure('2026-04-01T05:40:00Z', '4.500 m')
    await measure(APRIL.to, '4.500 m')
    await measure(MAY.to, '4.500 m')
    await close(MARCH)
    const march = await reconciled(MARCH)
    expect(march.tanks[0]).toMatchObject({ receiptTickets: [number], result: { receipts: { value: '100.000' }, lossGain: { value: '0.000' } } })
    expect(lossGain(await reconciled(APRIL))).toBe('0.000')
    // void, and replaced by 80 m³: −100 + 80, and 900 − (900 − 20) = +20 in April
    await world.ask('void-ticket', { number, reason, by })
    expect(lossGain(await reconciled(APRIL))).toBe('100.000')
    const second = await receipt(['2026-04-01T05:05:00Z', '4.000 m'], ['2026-04-01T05:30:00Z', '4.400 m'], { replaces: number })
    const april = await reconciled(APRIL)
    expect(april.tanks[0]?.result).toMatchObject({ opening: { value: '900.000' }, adjustments: { value: '-20.000' }, lossGain: { value: '20.000' } })
    expect(standsAs(await reconciled(MARCH))).toEqual(standsAs(march))
    const paper = await printed(MARCH)
    await close(APRIL)
    // now April is closed too: the replacement is taken back late, and May bears it: 900 − (900 − 80) = +80
    await world.ask('void-ticket', { number: second.number, reason, by, late: { bookedAt: '2026-05-10T06:00:00Z' } })
    expect(standsAs(await reconciled(MARCH))).toEqual(standsAs(march))
    expect(standsAs(await reconciled(APRIL))).toEqual(standsAs(april))
    expect(await printed(MARCH)).toEqual(paper)
    expect(lossGain(await reconciled(MAY))).toBe('80.000')
    // over all three: 900 measured at last − 800 at first − 0 booked = 0 + 20 + 80
    await close(MAY)
    await whole()
  })

  it('keeps a stock movement of two tanks in the same way, and the void is in both tanks of the next month', async () => {
    await world.ask('set-tank', { tank: aTank({ code: 'T-102', name: 'Tank 102' }), effectiveFrom: '2026-01-01T00:00:00Z', by })
    for (const [at, one, other] of [[MARCH.from, '4.000 m', '1.000 m'], ['2026-04-01T05:40:00Z', '3.500 m', '1.500 m'], [APRIL.to, '3.500 m', '1.500 m']] as const) {
      await measure(at, one)
      await measure(at, other, 'CRUDE', 'T-102')
    }
    const [from, to] = ['2026-04-01T05:05:00Z', '2026-04-01T05:30:00Z']
    const { seq } = await world.ask('post-stock-movement', { movement: { kind: 'tank-to-tank', from: { opening: gauge(from, '4.000 m'), closing: gauge(to, '3.500 m') }, to: { opening: gauge(from, '1.000 m', 'CRUDE', 'T-102'), closing: gauge(to, '1.500 m', 'CRUDE', 'T-102') } }, reason: 'Making room', by })
    await close(MARCH)
    const march = await reconciled(MARCH)
    expect([lossGain(march), lossGain(march, 'T-102')]).toEqual(['0.000', '0.000'])
    await world.ask('void-stock-movement', { seq, reason, by })
    expect(standsAs(await reconciled(MARCH))).toEqual(standsAs(march))
    // 700 − (700 + 100) and 300 − (300 − 100)
    const april = await reconciled(APRIL)
    expect([lossGain(april), lossGain(april, 'T-102')]).toEqual(['-100.000', '100.000'])
    await close(APRIL)
    await whole()
  })

  it('takes no inventory from before the first month that was entered after it was closed', async () => {
    await measure('2026-03-01T04:00:00Z', '4.000 m')
    await measure(MARCH.to, '4.000 m')
    await close(MARCH)
    const march = await reconciled(MARCH)
    await measure(MARCH.from, '3.900 m')
    expect(standsAs(await reconciled(MARCH))).toEqual(standsAs(march))
    await whole()
  })
})

describe('a tank that bore two names in the month', () => {
  const TWINS = ['T-101 as LIGHT was measured at both ends', 'T-101 as CRUDE was measured at both ends']
  const regraded = async (): Promise<void> => {
    const effectiveFrom = '2026-01-01T00:00:00Z'
    await world.ask('set-product', { product: aProduct({ code: 'LIGHT', name: 'Light component' }), effectiveFrom, by })
    await world.ask('set-limit', { limit: { product: 'LIGHT', percent: '0.25 %', fixed: '0 m3', base: 'receipts-and-deliveries', source: 'Storage agreement' }, effectiveFrom, by })
    await measure(MARCH.from, '4.000 m')
    await world.ask('post-stock-movement', { movement: { kind: 'regrade', gauge: gauge('2026-03-14T12:00:00Z', '4.000 m'), to: { product: 'LIGHT' } }, reason: 'Sold as a component', by })
  }
  const names = async (): Promise<readonly string[]> => (await world.ask('closing-checks', { period: MARCH.name })).checks.map(({ check }) => check)

  it('has each check under each of its names, none twice, whether it could be reconciled or not', async () => {
    await regraded()
    // nothing was measured under the new name yet
    expect((await names()).filter((check) => check.endsWith('both ends')).toSorted()).toEqual(TWINS.toSorted())
    expect((await reconciled(MARCH)).missing).toMatchObject([{ tank: 'T-101', product: 'LIGHT' }])
    await measure(MARCH.to, '3.900 m', 'LIGHT')
    const found = await names()
    expect(new Set(found).size).toBe(found.length)
    expect(found).toEqual(expect.arrayContaining([...TWINS, 'T-101 as LIGHT is within its limit', 'T-101 as CRUDE has no unbooked step beyond its limit']))
    // 780 − 800 = −20 under the new name; the sign-off of one covers no other
    const failing = found.filter((check) => check.startsWith('T-101 as LIGHT') && !check.includes('measured') || check.startsWith('LIGHT as a whole'))
    await world.ask('close-period', { ...closing(), signOffs: failing.map((check) => ({ check, reason: 'Drained by hand' })) })
    await whole()
  })

  it('and a seal that names them alike, as seals did before, holds still', async () => {
    await regraded()
    await measure(MARCH.to, '4.000 m', 'LIGHT')
    await closedInWords((check) => check.replace(/ as (?:CRUDE|LIGHT) /, ' '))
    await whole()
  })

  it('but not one that names another product', async () => {
    await regraded()
    await measure(MARCH.to, '4.000 m', 'LIGHT')
    await closedInWords((check) => check.replace('T-101 as LIGHT was', 'T-101 as OTHER was'))
    expect((await world.ask('verify-ledger', {})).differences).toMatchObject([{ what: expect.stringContaining('T-101 as OTHER was measured at both ends stands; the ledger gives T-101 as') }])
  })

  it('one of a single name keeps the words that it always had', async () => {
    await measure(MARCH.from, '4.000 m')
    await measure(MARCH.to, '4.000 m')
    expect(await names()).toEqual(expect.arrayContaining(['T-101 was measured at both ends', 'T-101 is within its limit', 'T-101 has no unbooked step beyond its limit']))
  })
})

/** Closes March with other names of its checks, soundly signed. */
async function closedInWords(worded: (check: string) => string): Promise<void> {
  const store = world.context.store!
  const { checks } = await world.ask('closing-checks', { period: MARCH.name })
  const [period] = await store.periods()
  const identity = (await store.entriesOfKind('identity-set')).find(({ body }) => body.identity.id === 'm-duarte')!.body.identity
  const closedAt = '2026-06-03T09:00:00Z'
  const listed = checks.map(({ check, holds, detail }): ClosingCheck => ({ check: worded(check), holds, detail, ...holds ? {} : { signedOff: { by, reason: 'Known' } } }))
  const seal: Seal = { schema: 'dipledger-seal-1', period: { ...MARCH }, closedAt, closedBy: by, head: await store.head(), ...await store.sealFigures(period!), checks: listed }
  const key = await world.context.keys.open(identity, (await store.protectedKey('m-duarte'))!, PASSPHRASE, 'passphrase')
  await store.append([{ kind: 'period-closed', at: closedAt, by, body: { seal, signature: { identity: identity.id, certificate: identity.fingerprint, cms: await signText(canonicalJson(seal), key, identity) } } }])
}
