import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { canonicalJson, type ClosingCheck, type Seal } from '../../../core/ledger/index.ts'
import { signText } from '../../../main/signing/index.ts'
import { aFolder } from '../../support/ledgers.ts'
import { APRIL, aQuietMarch, CLOSING_DAY, closing, MARCH } from '../../support/periods.ts'
import { aClosingGauge, anOpeningGauge } from '../../support/snapshots.ts'
import { aReceipt } from '../../support/tickets.ts'
import { aTerminalLedger, aWorld, PASSPHRASE, type World } from '../../support/world.ts'

const by = 'M. Duarte'
const folder = aFolder()
let template: Awaited<ReturnType<typeof aTerminalLedger>>
let world: World
beforeAll(async () => { template = await aTerminalLedger() })
afterAll(async () => { folder.remove(); await template.remove() })
beforeEach(async () => { world = await aWorld({ copyOf: template.path, now: () => CLOSING_DAY }) })
afterEach(() => world.close())

/** Closes March as somebody would who has the program, the ledger and a key of his own: with other checks, soundly signed. */
async function closedWith(change: (checks: readonly ClosingCheck[]) => readonly ClosingCheck[]): Promise<number> {
  const store = world.context.store!
  const { checks } = await world.ask('closing-checks', { period: MARCH.name })
  const head = await store.head()
  const [period] = await store.periods()
  const identity = (await store.entriesOfKind('identity-set')).find(({ body }) => body.identity.id === 'm-duarte')!.body.identity
  const seal: Seal = {
    schema: 'dipledger-seal-1', period: { ...MARCH }, closedAt: CLOSING_DAY, closedBy: by, head, ...await store.sealFigures(period!),
    checks: [...change(checks.map(({ check, holds, detail }) => ({ check, holds, detail })))],
  }
  const key = await world.context.keys.open(identity, (await store.protectedKey('m-duarte'))!, PASSPHRASE, 'passphrase')
  const [entry] = await store.append([{ kind: 'period-closed', at: CLOSING_DAY, by, body: { seal, signature: { identity: identity.id, certificate: identity.fingerprint, cms: await signText(canonicalJson(seal), key, identity) } } }])
  return entry!.seq
}

/** A check with something put in its place. */
const withCheck = (name: string, parts: Partial<ClosingCheck>) => (checks: readonly ClosingCheck[]): readonly ClosingCheck[] => checks.map((one) => (one.check === name ? { ...one, ...parts } : one))

describe('the list of checks in a seal', () => {
  it('is what the ledger gives, as it was closed', async () => {
    await aQuietMarch(world)
    await closedWith((checks) => checks)
    expect(await world.ask('verify-ledger', {})).toMatchObject({ whole: true, differences: [] })
  })

  it.each<[string, (checks: readonly ClosingCheck[]) => readonly ClosingCheck[], string]>([
    ['a limit that was kept, though it was not', withCheck('T-101 is within its limit', { holds: true, detail: 'loss or gain 0.000 m3, limit 9.999 m3' }), 'seal, checks, “T-101 is within its limit”, detail: loss or gain 0.000 m3, limit 9.999 m3 stands; the ledger gives loss or gain'],
    ['an inventory that nobody measured', withCheck('T-101 was measured at both ends', { detail: 'opening 2026-03-01T06:00:00Z, closing 2026-04-01T06:00:00Z' }), 'seal, checks, “T-101 was measured at both ends”, detail: opening'],
    ['a check that was left out', (checks) => checks.filter(({ check }) => check !== 'No gauge alarm is open'), 'seal, checks, '],
    ['a check that nobody makes', (checks) => [...checks, { check: 'The roof was inspected', holds: true, detail: 'yes' }], 'The roof was inspected stands; the ledger gives nothing'],
    ['a failure that was signed off and is none', withCheck('No gauge alarm is open', { holds: false, signedOff: { by, reason: 'r' } }), 'seal, checks, “No gauge alarm is open”, holds: false stands; the ledger gives true'],
  ])('names %s', async (_, change, said) => {
    await aQuietMarch(world)
    const seq = await closedWith(change)
    const { whole, differences } = await world.ask('verify-ledger', {})
    expect(whole).toBe(false)
    expect(differences).toEqual([{ where: `entry ${seq}, seal of 2026-03`, what: expect.stringContaining(said) }])
  })

  it('is counted by verify-seal, which says where it is made again', async () => {
    await aQuietMarch(world)
    await world.ask('record-gauge-event', { event: { tank: 'T-101', gauge: 'LT-101', at: '2026-03-20T06:00:00Z', event: 'alarm', message: 'High level' }, by })
    const { seal } = await world.ask('close-period', { ...closing(), signOffs: [{ check: 'No gauge alarm is open', reason: 'Cleared by hand' }] })
    const { valid, checks } = await world.ask('verify-seal', { period: MARCH.name })
    expect(valid).toBe(true)
    expect(checks).toContainEqual({ check: 'Every check in it held or was signed off', holds: true, detail: `${seal.checks.length} checks, 1 signed off; verify-ledger makes them again` })
  })

  it('is refused in an import, by its line', async () => {
    await aQuietMarch(world)
    const seq = await closedWith(withCheck('T-101 is within its limit', { detail: 'loss or gain 0.000 m3, limit 9.999 m3' }))
    const { path } = await world.ask('export-ledger', { to: join(folder.path, 'changed.jsonl') })
    const line = readFileSync(path, 'utf8').split('\n').findIndex((text) => text.includes('"kind":"period-closed"')) + 1
    const answer = await world.call('import-ledger', { from: path, to: join(folder.path, 'made', 'imported.db') })
    expect(answer).toMatchObject({ refused: { findings: [{ code: 'ledger-line', path: `line ${line}`, value: expect.stringContaining(`entry ${seq}: seal, checks, “T-101 is within its limit”, detail: `) }] } })
  })

  it('stays whole when what was under way at the end is voided after it was closed', async () => {
    await world.ask('open-period', { ...MARCH, by })
    await world.ask('open-period', { ...APRIL, by })
    await world.ask('record-inventory', { snapshot: anOpeningGauge({ at: MARCH.from }), by })
    await world.ask('record-inventory', { snapshot: anOpeningGauge({ at: '2026-04-01T03:00:00Z' }), by })
    // this one is nearer to the end, and does not count as long as the ticket stands
    await world.ask('record-inventory', { snapshot: anOpeningGauge({ at: '2026-04-01T05:40:00Z' }), by })
    const { number } = await world.ask('post-ticket', aReceipt({ opening: anOpeningGauge({ at: '2026-04-01T05:30:00Z' }), closing: aClosingGauge({ at: '2026-04-01T07:30:00Z' }) }))
    const { seal } = await world.ask('close-period', closing())
    expect(seal.checks.find(({ check }) => check === 'T-101 was measured at both ends')?.detail).toBe(`opening ${MARCH.from}, closing 2026-04-01T03:00:00Z`)
    await world.ask('void-ticket', { number, reason: 'Wrong tank', by })
    expect(await world.ask('verify-ledger', {})).toMatchObject({ whole: true, differences: [] })
  })
})

it('a void ticket of the month comes out with its reason', async () => {
  await aQuietMarch(world)
  await world.ask('void-ticket', { number: 'CPT-000001', reason: 'Wrong tank', by })
  await world.ask('post-ticket', aReceipt({ replaces: 'CPT-000001' }))
  await world.ask('close-period', closing())
  expect(await world.ask('verify-ledger', {})).toMatchObject({ whole: true, differences: [] })
})
