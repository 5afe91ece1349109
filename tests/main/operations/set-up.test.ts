import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { aProduct } from '../../support/snapshots.ts'
import { aTank } from '../../support/tanks.ts'
import { aTerminalLedger, aWorld, PASSPHRASE, type World } from '../../support/world.ts'

let template: Awaited<ReturnType<typeof aTerminalLedger>>
let world: World
beforeAll(async () => { template = await aTerminalLedger() })
afterAll(() => template.remove())
beforeEach(async () => { world = await aWorld({ copyOf: template.path }) })
afterEach(() => world.close())

const by = 'M. Duarte'
const effectiveFrom = '2026-02-01T00:00:00Z'

async function codesOf(name: string, input: unknown): Promise<readonly string[]> {
  const answer = await world.call(name, input)
  if (!('refused' in answer)) throw new Error(`not refused: ${JSON.stringify(answer).slice(0, 300)}`)
  return answer.refused.findings.map((finding) => `${finding.path} ${finding.code}`)
}

describe('a terminal that is set up', () => {
  it('stands as it was entered, with who can sign', async () => {
    const stands = await world.ask('terminal', {})
    expect(stands.terminal?.code).toBe('CPT')
    expect(stands.tanks).toEqual([aTank()])
    expect(stands.products).toEqual([aProduct()])
    expect(stands.parties.map((party) => party.code)).toEqual(['CPT', 'NORTHSHORE'])
    expect(stands.identities.map(({ id, name, party, hasKey }) => ({ id, name, party, hasKey }))).toEqual([
      { id: 'j-vance', name: 'J. Vance', party: 'NORTHSHORE', hasKey: true }, { id: 'm-duarte', name: 'M. Duarte', party: 'CPT', hasKey: true },
    ])
    expect(stands.limits.map((limit) => limit.percent)).toEqual(['0.25 %'])
    expect({ lastGauges: stands.lastGauges, nextNumber: stands.nextNumber, seq: stands.head.seq }).toEqual({ lastGauges: [], nextNumber: 'CPT-000001', seq: 8 })
  })

  it('is nothing yet in a new ledger', async () => {
    const empty = await aWorld()
    try {
      expect(await empty.ask('terminal', {})).toMatchObject({ terminal: null, tanks: [], nextNumber: '', head: { seq: 0 } })
    } finally {
      await empty.close()
    }
  })

  it('shows the version of a tank in force now, not one that is still to come', async () => {
    await world.ask('set-tank', { tank: aTank({ name: 'Now' }), effectiveFrom: '2026-03-15T07:59:59Z', by })
    await world.ask('set-tank', { tank: aTank({ name: 'To come' }), effectiveFrom: '2026-03-15T08:00:01Z', by })
    expect((await world.ask('terminal', {})).tanks.map((tank) => tank.name)).toEqual(['Now'])
  })

  it('keeps no passphrase and no open key in its entries', async () => {
    const { store } = world.context
    for (let seq = 1; seq <= 8; seq += 1) expect(JSON.stringify(await store?.entry(seq))).not.toContain(PASSPHRASE)
  })
})

describe('what cannot be set up', () => {
  it('a zone that nobody knows', async () => {
    expect(await codesOf('set-terminal', { terminal: { code: 'CPT', name: 'Calder Point Terminal', zone: 'Calder/Point', gaugeHour: '06:00' }, by })).toEqual(['terminal.zone out-of-range'])
  })

  it('a tank with a falling table, no such product and no date, all at once', async () => {
    const tank = aTank({ product: 'TAR', capacityTable: { ...aTank().capacityTable, rows: [['0', '0'], ['100', '20'], ['200', '10']] } })
    expect(await codesOf('set-tank', { tank, effectiveFrom: 'yesterday', by })).toEqual(['tank.capacityTable.rows.3 capacity-table-not-increasing', 'effectiveFrom unreadable-value'])
    expect(await codesOf('set-tank', { tank: aTank({ product: 'TAR' }), effectiveFrom, by })).toEqual(['tank.product unknown-product'])
  })

  it('a special product without its expansion factor, or another one with it', async () => {
    expect(await codesOf('set-product', { product: aProduct({ commodity: 'special' }), effectiveFrom, by })).toEqual(['product.alpha missing-value'])
    expect(await codesOf('set-product', { product: aProduct({ alpha: '0.00051 /degF' }), effectiveFrom: 'x', by })).toEqual(['product.alpha value-not-used', 'effectiveFrom unreadable-value'])
  })

  it('a limit that does not read, for a product that is not there', async () => {
    const limit = { product: 'TAR', percent: 'little', fixed: '-1 m3', base: 'deliveries', source: 'x' }
    expect(await codesOf('set-limit', { limit, effectiveFrom, by })).toEqual(['limit.product unknown-product', 'limit.percent unreadable-value', 'limit.fixed out-of-range'])
  })

  it('an identity of a party that is not there, one that is there already, or one with a short passphrase', async () => {
    expect(await codesOf('create-identity', { id: 'm-duarte', name: 'M. Duarte', party: 'NOBODY', passphrase: PASSPHRASE, by })).toEqual(['id already-on-record', 'party unknown-party'])
    expect(await codesOf('create-identity', { id: 'new', name: 'New', party: 'CPT', passphrase: 'short', by })).toEqual(['passphrase passphrase-too-short'])
    expect(await codesOf('import-identity', { id: 'new', party: 'CPT', file: 'AAAA', filePassphrase: 'x', passphrase: PASSPHRASE, by })).toEqual(['file identity-file-unreadable'])
  })

  it('the same identity twice at once: one is made, and its key is its own', async () => {
    const make = (passphrase: string) => world.call('create-identity', { id: 'twin', name: 'Twin', party: 'CPT', passphrase, by })
    const answers = await Promise.all([make('the first of two passphrases'), make('the second of two passphrases')])
    expect(answers.filter((answer) => 'result' in answer)).toHaveLength(1)
    const passphrase = 'result' in (answers[0] ?? {}) ? 'the first of two passphrases' : 'the second of two passphrases'
    const identity = (await world.ask('terminal', {})).identities.find((one) => one.id === 'twin')
    const kept = await world.context.store?.protectedKey('twin')
    if (!identity || kept === undefined) throw new Error('the twin is not on record')
    expect(await world.context.keys.open(identity, kept, passphrase, 'passphrase')).toMatchObject({ type: 'private' })
  })
})
