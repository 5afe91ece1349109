import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import type { InputOf } from '../../../main/operations/contracts/index.ts'
import { aClosingGauge, anOpeningGauge } from '../../support/snapshots.ts'
import { aTank } from '../../support/tanks.ts'
import { aVerification } from '../../support/verifications.ts'
import { aTerminalLedger, aWorld, PASSPHRASE, type World } from '../../support/world.ts'

let template: Awaited<ReturnType<typeof aTerminalLedger>>
let world: World
beforeAll(async () => { template = await aTerminalLedger() })
afterAll(() => template.remove())
beforeEach(async () => { world = await aWorld({ copyOf: template.path }) })
afterEach(() => world.close())

const by = 'A. Reis'
const off = { asFound: ['2.000 m', '6.000 m', '11.000 m'].map((innage) => ({ automatic: innage.replace('.000', '.009'), hand: { innage } })) }
const instrument = { kind: 'automatic' as const, id: 'LT-101', status: 'ok' as const }

async function codesOf(name: string, input: unknown): Promise<readonly string[]> {
  const answer = await world.call(name, input)
  if (!('refused' in answer)) throw new Error(`not refused: ${JSON.stringify(answer).slice(0, 300)}`)
  return answer.refused.findings.map(({ path, code }) => `${path} ${code}`)
}

describe('the verification of an automatic gauge', () => {
  it('needs no ledger to be worked out', async () => {
    expect(await world.ask('verify-gauge', { tank: aTank(), verification: aVerification() })).toMatchObject({ verdict: 'within', asLeft: null })
  })

  it('is entered with its result and the version of its tank, and the terminal knows it', async () => {
    const { seq, result } = await world.ask('record-gauge-verification', { verification: aVerification(off), by })
    expect(result.verdict).toBe('outside')
    expect((await world.context.store?.entry(seq))?.body).toMatchObject({ verification: aVerification(off), result, tank: { code: 'T-101' } })
    expect((await world.ask('terminal', {})).verifications).toEqual([{
      seq, tank: 'T-101', gauge: 'LT-101', at: '2026-03-01T08:00:00Z', use: 'custody', rule: 'MPMS-3.1B', verdict: 'outside', greatest: '9 mm', limit: '4 mm', nextDue: null,
    }])
    expect((await world.ask('list-entries', {})).entries[0]?.summary).toBe('Gauge LT-101 of T-101 verified for custody at 2026-03-01T08:00:00Z: outside limits')
    expect(await world.ask('verify-ledger', {})).toMatchObject({ whole: true })
  })

  it('is refused in the future, for a tank that is not on record, and with every finding of its levels', async () => {
    expect(await codesOf('record-gauge-verification', { verification: aVerification({ at: '2026-04-01T00:00:00Z' }), by })).toEqual(['verification.at time-in-future'])
    expect(await codesOf('record-gauge-verification', { verification: aVerification({ tank: 'T-9' }), by })).toEqual(['verification.tank unknown-tank'])
    const wrong = aVerification({ asFound: [{ automatic: 'low', hand: { innage: '2 m' } }, { automatic: '6 m', hand: { ullage: '14 m' } }] })
    expect(await codesOf('record-gauge-verification', { verification: wrong, by })).toEqual([
      'verification.asFound missing-value', 'verification.asFound.0.automatic unreadable-value', 'verification.asFound.1.hand.ullage ullage-beyond-reference-height',
    ])
  })
})

describe('a custody ticket on automatic gauges', () => {
  const ticket = (): InputOf<'post-ticket'> => ({
    ticket: { kind: 'receipt', tank: 'T-101', product: 'CRUDE', from: 'NORTHSHORE', to: 'CPT', opening: anOpeningGauge({ instrument }), closing: aClosingGauge({ instrument }) },
    signers: [{ identity: 'm-duarte', role: 'terminal', passphrase: PASSPHRASE }, { identity: 'j-vance', role: 'counterparty', passphrase: PASSPHRASE }],
  })

  it('is refused until the gauge was verified within its limits', async () => {
    expect(await codesOf('post-ticket', ticket())).toEqual(['ticket.opening.instrument gauge-not-verified', 'ticket.closing.instrument gauge-not-verified'])
    await world.ask('record-gauge-verification', { verification: aVerification(off), by })
    expect(await codesOf('post-ticket', ticket())).toEqual(['ticket.opening.instrument gauge-out-of-limits', 'ticket.closing.instrument gauge-out-of-limits'])
    await world.ask('record-gauge-verification', { verification: aVerification({ at: '2026-03-02T08:00:00Z' }), by })
    const { number } = await world.ask('post-ticket', ticket())
    expect(number).toBe('CPT-000001')
  }, 60_000)

  it('an inventory may stand on a gauge that was not verified', async () => {
    const { worksheet } = await world.ask('record-inventory', { snapshot: anOpeningGauge({ instrument }), by })
    expect(worksheet.exceptions).toEqual([])
  })
})
