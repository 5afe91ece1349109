import { execFileSync } from 'node:child_process'
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { canonicalJson, sha256Hex, type SealFile } from '../../../core/ledger/index.ts'
import { DESK_PASSPHRASE, putOnRecord, signIn } from '../../support/desk.ts'
import { APRIL, aQuietMarch, CLOSING_DAY, closing, MARCH } from '../../support/periods.ts'
import { aClosingGauge, anOpeningGauge } from '../../support/snapshots.ts'
import { aReceipt, gaugesOn } from '../../support/tickets.ts'
import { aTerminalLedger, aWorld, PASSPHRASE, type World } from '../../support/world.ts'

const by = 'M. Duarte'
let template: Awaited<ReturnType<typeof aTerminalLedger>>
let world: World
let now = CLOSING_DAY
beforeAll(async () => { template = await aTerminalLedger() })
afterAll(() => template.remove())
beforeEach(async () => {
  now = CLOSING_DAY
  world = await aWorld({ copyOf: template.path, now: () => now })
})
afterEach(() => world.close())

async function refusedAs(name: string, input: unknown): Promise<readonly string[]> {
  const answer = await world.call(name, input)
  if (!('refused' in answer)) throw new Error(`not refused: ${JSON.stringify(answer).slice(0, 300)}`)
  return answer.refused.findings.map((finding) => `${finding.path} ${finding.code}`)
}

async function marchClosed(): Promise<void> {
  await aQuietMarch(world)
  await world.ask('open-period', { by })
  await world.ask('close-period', closing())
}

describe('opening', () => {
  it('changes nothing for a ledger that never opened a period', async () => {
    await world.ask('post-ticket', aReceipt())
    expect(await world.ask('periods', {})).toMatchObject({ periods: [], bookedAt: null })
    expect(await refusedAs('void-ticket', { number: 'CPT-000001', reason: 'Wrong tank', by, late: {} })).toEqual(['late value-not-used'])
    await world.ask('void-ticket', { number: 'CPT-000001', reason: 'Wrong tank', by })
  })

  it('suggests a month on the terminal’s clock; each next begins where the one before ends', async () => {
    await world.ask('post-ticket', aReceipt())
    expect((await world.ask('periods', {})).next).toEqual(MARCH)
    expect(await world.ask('open-period', { by })).toMatchObject({ period: MARCH })
    expect((await world.ask('periods', {})).next).toEqual(APRIL)
    expect(await refusedAs('open-period', { from: '2026-04-01T06:00:00Z', by })).toEqual(['from period-gap'])
    expect(await refusedAs('open-period', { from: '2026-03-31T06:00:00Z', by })).toEqual(['from period-gap'])
    expect(await refusedAs('open-period', { to: '2026-04-01T05:00:00Z', by })).toEqual(['to period-backwards'])
    expect(await refusedAs('open-period', { name: '2026-03', by })).toEqual(['name already-on-record'])
    expect(await refusedAs('open-period', { name: '../march', by })).toEqual(['name unreadable-value'])
    expect(await world.ask('open-period', { name: 'April', by })).toMatchObject({ period: { ...APRIL, name: 'April' } })
  })

  it('suggests the month of the first movement that stands, whatever was entered first and however late the last gauge is', async () => {
    const adjust = (effectiveAt: string) => world.ask('post-adjustment', { tank: 'T-101', effectiveAt, nsv: '1.000 m3', reason: 'r', approvedBy: by })
    await adjust('2026-04-02T06:00:00Z')
    expect((await world.ask('periods', {})).next).toEqual(APRIL)
    await world.ask('post-ticket', aReceipt())
    await world.ask('record-inventory', { snapshot: aClosingGauge({ at: '2026-04-03T07:00:00Z' }), by })
    expect((await world.ask('periods', {})).next).toEqual(MARCH)
    await world.ask('void-ticket', { number: 'CPT-000001', reason: 'Wrong tank', by })
    expect((await world.ask('periods', {})).next).toEqual(APRIL)
    await adjust('2026-01-20T06:00:00Z')
    expect((await world.ask('periods', {})).next).toEqual({ name: '2026-01', from: '2026-01-01T06:00:00Z', to: '2026-02-01T06:00:00Z' })
  })

  it('looks past a first entry that is void', async () => {
    await world.ask('post-ticket', aReceipt())
    await world.ask('void-ticket', { number: 'CPT-000001', reason: 'Wrong tank', by })
    await world.ask('post-adjustment', { tank: 'T-101', effectiveAt: '2026-04-02T06:00:00Z', nsv: '1.000 m3', reason: 'r', approvedBy: by })
    expect((await world.ask('periods', {})).next).toEqual(APRIL)
  })

  it('lets an inventory open the first period, and nothing be booked before it or after the last', async () => {
    await world.ask('open-period', { ...MARCH, by })
    await world.ask('record-inventory', { snapshot: anOpeningGauge({ at: '2026-02-28T23:00:00Z' }), by })
    expect(await refusedAs('post-adjustment', { tank: 'T-101', effectiveAt: MARCH.from, nsv: '1.000 m3', reason: 'r', approvedBy: by })).toEqual(['effectiveAt period-not-open'])
    expect(await refusedAs('post-adjustment', { tank: 'T-101', effectiveAt: '2026-04-01T05:00:01Z', nsv: '1.000 m3', reason: 'r', approvedBy: by })).toEqual(['effectiveAt period-not-open'])
    expect(await refusedAs('record-inventory', { snapshot: anOpeningGauge({ at: '2026-04-01T05:00:01Z' }), by })).toEqual(['snapshot.at period-not-open'])
    await world.ask('post-adjustment', { tank: 'T-101', effectiveAt: MARCH.to, nsv: '1.000 m3', reason: 'r', approvedBy: by })
  })
})

describe('closing', () => {
  it('seals what the entries give, signed so that openssl agrees', async () => {
    await aQuietMarch(world)
    const { checks } = await world.ask('closing-checks', { period: '2026-03' })
    expect(checks.filter(({ holds }) => !holds)).toEqual([])
    const head = (await world.ask('terminal', {})).head
    const closed = await world.ask('close-period', closing())
    const nsv = (await world.ask('read-ticket', { number: 'CPT-000001' })).ticket.result.tankChange.nsv
    expect(closed.seal).toMatchObject({
      schema: 'dipledger-seal-1', period: MARCH, closedAt: CLOSING_DAY, closedBy: by, head,
      counts: { entries: head.seq, tickets: 1, voided: 0, inventories: 1, adjustments: 0, stockMovements: 0, lateCorrections: 0 },
      balances: [{ code: 'T-101', product: 'CRUDE', nsv: { unit: 'm3' } }], owners: [],
    })
    expect(Number(closed.seal.balances[0]?.nsv.value)).toBe(Number(nsv.value))
    expect(closed.sealHash).toBe(sha256Hex(canonicalJson(closed.seal)))
    const { file } = await world.ask('seal-document', { period: '2026-03', format: 'json' })
    const inside: SealFile = JSON.parse(Buffer.from(file, 'base64').toString())
    const [text, signature, certificate] = ['seal.json', 'seal.p7s', 'signer.der'].map((name) => join(world.folder, name))
    if (text === undefined || signature === undefined || certificate === undefined) throw new Error('no files')
    writeFileSync(text, canonicalJson(inside.seal))
    writeFileSync(signature, Buffer.from(inside.signature.cms, 'base64'))
    writeFileSync(certificate, Buffer.from(inside.certificate, 'base64'))
    const openssl = (content: string): string => execFileSync('openssl', ['cms', '-verify', '-inform', 'DER', '-in', signature, '-content', content, '-binary', '-noverify', '-certfile', certificate, '-out', '/dev/null'], { stdio: 'pipe' }).toString()
    openssl(text)
    writeFileSync(text, canonicalJson({ ...inside.seal, closedBy: 'Somebody else' }))
    expect(() => openssl(text)).toThrow(/verification failure|digest/i)
    expect(await world.ask('verify-seal', { period: '2026-03' })).toMatchObject({ valid: true, sealHash: closed.sealHash })
    expect(await world.ask('verify-seal', { file })).toMatchObject({ valid: true })
    expect(await world.ask('verify-seal', inside)).toMatchObject({ valid: true })
    expect(await refusedAs('verify-seal', { period: '2026-03', file })).toEqual(['period missing-value'])
    expect(await refusedAs('verify-seal', { seal: inside.seal })).toEqual(['seal unreadable-value'])
    expect(await world.ask('verify-ledger', {})).toMatchObject({ whole: true, differences: [] })
  })

  it('is refused as long as something does not hold, and takes a reason for each', async () => {
    await world.ask('open-period', { ...MARCH, by })
    await world.ask('post-ticket', aReceipt())
    await world.ask('save-draft', { id: 'd-1', kind: 'transfer', title: 'Receipt into T-101', body: { opening: { at: '2026-03-31 22:00' } } })
    await world.ask('save-draft', { id: 'd-2', kind: 'transfer', title: 'April', body: { opening: { at: '2026-04-02 22:00' } } })
    const failing = (await world.ask('closing-checks', { period: '2026-03' })).checks.filter(({ holds }) => !holds).map(({ check }) => check)
    expect(failing).toEqual(['T-101 was measured at both ends', 'No ticket draft of the period waits'])
    expect(await refusedAs('close-period', closing())).toEqual(['signOffs check-not-signed-off', 'signOffs check-not-signed-off'])
    const signOffs = failing.map((check) => ({ check, reason: 'The tank was under repair' }))
    expect(await refusedAs('close-period', { ...closing(), signOffs: [...signOffs, { check: 'The ledger is whole', reason: 'r' }, { check: 'All is well', reason: 'r' }] })).toEqual(['signOffs.2.check value-not-used', 'signOffs.3.check value-not-used'])
    expect(await refusedAs('close-period', { ...closing(), signOffs: signOffs.map(({ check }) => ({ check, reason: ' ' })) })).toEqual(['signOffs.0.reason reason-missing', 'signOffs.1.reason reason-missing'])
    const { seal } = await world.ask('close-period', { ...closing(), signOffs })
    expect(seal.checks.filter(({ holds }) => !holds).map(({ signedOff }) => signedOff)).toEqual([{ by, reason: 'The tank was under repair' }, { by, reason: 'The tank was under repair' }])
  })

  it.each([
    ['before it ends', { at: '2026-03-31T12:00:00Z' }, ['period time-in-future']],
    ['that there is not', { set: { period: '2026-02' } }, ['period unknown-period']],
    ['without a signer', { set: { identity: undefined } }, ['identity missing-value']],
    ['without a passphrase', { set: { passphrase: undefined } }, ['passphrase missing-value']],
    ['with a wrong passphrase', { set: { passphrase: 'not this one at all' } }, ['passphrase passphrase-wrong']],
    ['by somebody not on record', { set: { identity: 'nobody' } }, ['identity unknown-identity']],
    ['by nobody', { set: { by: undefined } }, ['by missing-value']],
    ['by a certificate that ran out', { at: '2029-12-01T00:00:00Z' }, ['identity certificate-not-valid']],
  ])('is refused %s', async (_what, { at, set }: { at?: string; set?: object }, expected) => {
    await aQuietMarch(world)
    now = at ?? now
    expect(await refusedAs('close-period', { ...closing(), ...set })).toEqual(expected)
  })

  it('goes one after another, once', async () => {
    await aQuietMarch(world)
    await world.ask('open-period', { by })
    now = '2026-05-03T09:00:00Z'
    await world.ask('record-inventory', { snapshot: aClosingGauge({ at: APRIL.to }), by })
    expect(await refusedAs('close-period', closing('2026-04'))).toEqual(['period check-not-signed-off'])
    await world.ask('close-period', closing())
    expect(await refusedAs('close-period', closing())).toEqual(['period period-closed'])
    const { seal } = await world.ask('close-period', closing('2026-04'))
    expect(seal).toMatchObject({ counts: { entries: 0, tickets: 0, inventories: 1 } })
    expect(await world.ask('verify-ledger', {})).toMatchObject({ whole: true })
  })
})

describe('a closed period', () => {
  it('takes no ticket, void, adjustment or inventory, and says how each is corrected late', async () => {
    await marchClosed()
    const adjustment = { tank: 'T-101', effectiveAt: '2026-03-20T06:00:00Z', nsv: '-1.500 m3', reason: 'Sample line left open', approvedBy: by }
    expect(await refusedAs('post-adjustment', adjustment)).toEqual(['effectiveAt period-closed'])
    expect(await refusedAs('void-ticket', { number: 'CPT-000001', reason: 'Wrong tank', by })).toEqual(['number period-closed'])
    expect(await refusedAs('post-ticket', aReceipt(gaugesOn(20)))).toEqual(['ticket.closing.at period-closed'])
    expect(await refusedAs('record-inventory', { snapshot: anOpeningGauge({ at: '2026-03-20T06:00:00Z' }), by })).toEqual(['snapshot.at period-closed'])
    const answer = await world.call('post-adjustment', adjustment)
    expect('refused' in answer && answer.refused.findings[0]?.message).toContain('post it as a late correction with late: {"period": "2026-03"}')
    // what began in it and ended later concerns it as well: the inventory that closed it was taken as still
    expect(await refusedAs('post-ticket', aReceipt({ opening: anOpeningGauge({ at: '2026-04-01T04:59:59Z' }), closing: aClosingGauge({ at: '2026-04-01T09:00:00Z' }) }))).toEqual(['ticket.opening.at period-closed'])
    await world.ask('post-ticket', aReceipt({ opening: anOpeningGauge({ at: '2026-04-01T05:00:00Z' }), closing: aClosingGauge({ at: '2026-04-01T09:00:00Z' }) }))
  })

  it.each([
    ['another period', { period: '2026-04' }, ['late.period out-of-range']],
    ['a period that there is not', { period: 'March' }, ['late.period out-of-range']],
    ['a time in the closed period', { bookedAt: '2026-03-31T00:00:00Z' }, ['late.bookedAt period-not-open']],
    ['a time at its very end', { bookedAt: '2026-04-01T05:00:00Z' }, ['late.bookedAt period-not-open']],
    ['a time that has not come', { bookedAt: '2026-04-20T00:00:00Z' }, ['late.bookedAt time-in-future']],
    ['a time that nobody can read', { bookedAt: '3 April' }, ['late.bookedAt unreadable-value']],
    ['an entry that booked nothing', { corrects: 1 }, ['late.corrects out-of-range']],
    ['an entry that there is not', { corrects: 9999 }, ['late.corrects out-of-range']],
  ])('is not corrected late with %s', async (_what, late, expected) => {
    await marchClosed()
    expect(await refusedAs('post-adjustment', { tank: 'T-101', effectiveAt: '2026-03-20T06:00:00Z', nsv: '-1.500 m3', reason: 'r', approvedBy: by, late })).toEqual(expected)
  })

  it('is corrected late in the open one, linked both ways, and stays as it was sealed', async () => {
    await marchClosed()
    const sealed = await world.ask('balances', { period: '2026-03' })
    const before = await world.ask('reconcile', MARCH_ENDS)
    const voided = await world.ask('void-ticket', { number: 'CPT-000001', reason: 'Closing level read from the wrong tank', by, late: {} })
    const replaced = await world.ask('post-ticket', aReceipt({ replaces: 'CPT-000001' }, { late: { period: '2026-03', bookedAt: '2026-04-02T00:00:00Z' } }))
    const adjusted = await world.ask('post-adjustment', { tank: 'T-101', effectiveAt: '2026-03-20T06:00:00Z', nsv: '-1.500 m3', reason: 'Sample line left open', approvedBy: by, late: {} })
    const { line } = await world.ask('read-ticket', { number: 'CPT-000001' })
    const original = line.seq
    expect(line).toMatchObject({ voided: { seq: voided.seq }, takenBack: { seq: voided.seq }, replacedBy: replaced.number })
    expect((await world.ask('read-ticket', { number: replaced.number })).line).toMatchObject({ late: { period: '2026-03', bookedAt: '2026-04-02T00:00:00Z' } })
    const march = await world.ask('read-period', { period: '2026-03' })
    expect(march.concerning.map(({ seq, kind, corrects, bookedAt }) => ({ seq, kind, corrects, bookedAt }))).toEqual([
      { seq: replaced.seq, kind: 'receipt', corrects: { seq: original, number: 'CPT-000001' }, bookedAt: '2026-04-02T00:00:00Z' },
      { seq: voided.seq, kind: 'correction', corrects: { seq: original, number: 'CPT-000001' }, bookedAt: CLOSING_DAY },
      { seq: adjusted.seq, kind: 'adjustment', corrects: null, bookedAt: CLOSING_DAY },
    ])
    expect((await world.ask('read-period', { period: '2026-04' })).booked).toEqual(march.concerning)
    // the closed book is as it was; the open one has all three
    expect(await world.ask('balances', { period: '2026-03' })).toEqual(sealed)
    const after = await world.ask('reconcile', MARCH_ENDS)
    expect(after.tanks).toEqual(before.tanks)
    expect(after.period?.concerning).toHaveLength(3)
    const april = await world.ask('balances', { at: CLOSING_DAY })
    expect(april).toMatchObject({ since: { period: '2026-03' }, changes: 3 })
    expect(Number(april.balances[0]?.nsv.value)).toBeCloseTo(Number(sealed.balances[0]?.nsv.value) - 1.5, 9)
    expect(await world.ask('verify-ledger', {})).toMatchObject({ whole: true, differences: [] })
    expect(await world.ask('verify-seal', { period: '2026-03' })).toMatchObject({ valid: true })
  })

  it('is corrected at the end of the last open period, where that has ended too', async () => {
    await marchClosed()
    now = '2026-06-01T00:00:00Z'
    expect((await world.ask('periods', {})).bookedAt).toBe(APRIL.to)
    await world.ask('void-ticket', { number: 'CPT-000001', reason: 'Wrong tank', by, late: {} })
    expect((await world.ask('read-period', { period: '2026-03' })).concerning[0]).toMatchObject({ bookedAt: APRIL.to })
  })

  it('a late correction that was wrong is taken away while its own period is open', async () => {
    await marchClosed()
    const late = await world.ask('post-ticket', aReceipt(gaugesOn(20), { late: {} }))
    expect(await refusedAs('void-ticket', { number: late.number, reason: 'Twice', by, late: {} })).toEqual(['late value-not-used'])
    await world.ask('void-ticket', { number: late.number, reason: 'Entered twice', by })
    expect((await world.ask('read-period', { period: '2026-03' })).concerning).toEqual([])
  })

  it('has a page and a file to take away', async () => {
    await marchClosed()
    const pdf = await world.ask('seal-document', { period: '2026-03', format: 'pdf' })
    expect(pdf.name).toBe('seal-CPT-2026-03.pdf')
    const path = join(world.folder, 'seal.pdf')
    writeFileSync(path, Buffer.from(pdf.file, 'base64'))
    const text = execFileSync('pdftotext', ['-layout', path, '-']).toString()
    expect(text).toContain('PERIOD SEAL')
    expect(text).toContain('T-101 is within its limit')
    expect(await refusedAs('seal-document', { period: '2026-04', format: 'pdf' })).toEqual(['period out-of-range'])
    expect(await refusedAs('verify-seal', { period: '2026-04' })).toEqual(['period out-of-range'])
    expect(await refusedAs('verify-seal', {})).toEqual(['period missing-value'])
    expect(await refusedAs('verify-seal', { file: Buffer.from('{}').toString('base64') })).toEqual(['file unreadable-value'])
    expect(await refusedAs('balances', { period: '2026-05' })).toEqual(['period unknown-period'])
    expect(await refusedAs('balances', { at: 'now' })).toEqual(['at unreadable-value'])
    expect(await refusedAs('balances', { at: CLOSING_DAY, period: '2026-03' })).toEqual(['at value-not-used'])
  })

  it('a seal that was altered is found', async () => {
    await marchClosed()
    const { file } = await world.ask('seal-document', { period: '2026-03', format: 'json' })
    const whole: SealFile = JSON.parse(Buffer.from(file, 'base64').toString())
    const altered = { ...whole, seal: { ...whole.seal, counts: { ...whole.seal.counts, tickets: 2 } } }
    const answer = await world.ask('verify-seal', { file: Buffer.from(JSON.stringify(altered)).toString('base64') })
    expect(answer.valid).toBe(false)
    expect(answer.checks.filter(({ holds }) => !holds).map(({ check }) => check)).toEqual(['The signature fits the seal', 'The ledger that is open holds this very seal'])
  })
})

const MARCH_ENDS = { from: MARCH.from, to: MARCH.to }

describe('where two people are needed', () => {
  it('one prepares the closing with its sign-offs; another approves it, and signs', async () => {
    await aQuietMarch(world)
    await putOnRecord(world, ['accountant'])
    await signIn(world, 'administrator')
    await world.ask('set-person', { person: { id: 'ivo-sorrel', name: 'Ivo Sorrel', party: 'CPT', roles: ['accountant'], active: true, identity: 'm-duarte' }, passphrase: DESK_PASSPHRASE })
    await world.ask('set-desk-rules', { rules: { approval: 'two-people', idleMinutes: 15 } })
    await signIn(world, 'accountant')
    expect(await refusedAs('close-period', { period: '2026-03' })).toEqual(['operation approval-needed'])
    const asked = { operation: 'close-period', note: 'March is done' }
    expect(await refusedAs('propose', { ...asked, input: { period: '2026-03', passphrase: PASSPHRASE } })).toEqual(['input.passphrase value-not-used'])
    const { id, posts } = await world.ask('propose', { ...asked, input: { period: '2026-03' } })
    expect(posts).toEqual(['Period 2026-03 closed by whoever approves it'])
    const other = await world.ask('propose', { operation: 'post-adjustment', note: '', input: { tank: 'T-101', effectiveAt: '2026-03-20T08:00:00Z', nsv: '-12.3 m3', reason: 'Read late' } })
    const waits = (await world.ask('closing-checks', { period: '2026-03' })).checks.find(({ check }) => check === 'Nothing waits for approval')
    expect(waits).toMatchObject({ holds: false, detail: expect.stringMatching(/^post adjustment by [A-Z][a-z]+ [A-Z][a-z]+, \d{4}-/) as unknown })
    await world.ask('withdraw-proposal', { id: other.id })
    expect(JSON.stringify(await world.context.store?.proposals())).not.toContain('passphrase')
    await world.ask('open-session', { person: 'ivo-sorrel', passphrase: DESK_PASSPHRASE })
    expect((await world.ask('list-proposals', {})).proposals).toMatchObject([{ id, wrong: [], notBy: '' }])
    expect(await refusedAs('approve-proposal', { id })).toEqual(['passphrase missing-value'])
    expect(await refusedAs('approve-proposal', { id, identity: 'j-vance', passphrase: PASSPHRASE })).toEqual(['identity signer-not-entitled'])
    await world.ask('approve-proposal', { id, passphrase: PASSPHRASE })
    expect(await world.ask('read-period', { period: '2026-03' })).toMatchObject({ seal: { closedBy: 'Ivo Sorrel' }, signedBy: 'M. Duarte', signature: { identity: 'm-duarte' } })
    expect((await world.context.store?.latestEntries(1))?.[0]).toMatchObject({ kind: 'period-closed', origin: { person: 'ivo-sorrel', preparedBy: 'mara-teague' } })
    expect(await world.ask('verify-ledger', {})).toMatchObject({ whole: true })
  })
})
