import { execFileSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { canonicalJson } from '../../../core/ledger/index.ts'
import type { OutputOf } from '../../../main/operations/contracts/index.ts'
import { SAMPLE_PASSPHRASE, SAMPLES, sampleFiles, SEPTEMBER } from '../../support/sample-folder.ts'
import { aWorld, type World } from '../../support/world.ts'

let world: World
let imported: OutputOf<'import-terminal'>
let tickets: OutputOf<'list-tickets'>['tickets']
let report: OutputOf<'reconcile'>
beforeAll(async () => {
  world = await aWorld({ now: () => '2026-11-25T09:00:00Z' })
  imported = await world.ask('import-terminal', { files: await sampleFiles(), by: 'sample data', passphrase: SAMPLE_PASSPHRASE, withMonth: true })
  tickets = (await world.ask('list-tickets', { limit: 1000 })).tickets.toReversed()
  report = await world.ask('reconcile', SEPTEMBER)
}, 180_000)
afterAll(() => world.close())

describe('the sample terminal', () => {
  it('has eight tanks of every kind of roof, four products, and people of every party that signs', async () => {
    const { tanks, products, identities, limits } = await world.ask('terminal', {})
    expect(tanks.map((tank) => [tank.code, tank.roof.kind, tank.insulated])).toEqual([
      ['TK-101', 'external-floating', false], ['TK-102', 'external-floating', false], ['TK-201', 'internal-floating', false], ['TK-202', 'internal-floating', false],
      ['TK-203', 'external-floating', false], ['TK-301', 'none', false], ['TK-302', 'none', false], ['TK-401', 'none', true],
    ])
    expect(products.map((product) => `${product.code} ${product.baseTemperature}`)).toEqual(['CRUDE 60 degF', 'DIESEL 15 degC', 'FUEL380 15 degC', 'GASO95 60 degF'])
    expect(identities.every((identity) => identity.hasKey)).toBe(true)
    expect(limits.map((limit) => limit.product).toSorted()).toEqual(products.map((product) => product.code).toSorted())
  })
})

describe('its September', () => {
  it('gives more than forty tickets, numbered without a gap, each issued after its closing gauge', () => {
    expect(tickets.length).toBeGreaterThanOrEqual(44)
    expect(imported.tickets).toBe(tickets.length)
    expect(tickets.map((ticket) => ticket.number)).toEqual(tickets.map((_, i) => `CPT-${String(i + 1).padStart(6, '0')}`))
    const issued = tickets.map((ticket) => ticket.issuedAt)
    expect(issued).toEqual(issued.toSorted())
    for (const ticket of tickets) expect(Date.parse(ticket.issuedAt) - Date.parse(ticket.closedAt)).toBeGreaterThanOrEqual(20 * 60_000)
  })

  it('has worksheets without exceptions', async () => {
    const found: string[] = []
    for (const { number } of tickets) {
      const { ticket } = await world.ask('read-ticket', { number })
      found.push(...[...ticket.result.exceptions, ...ticket.result.opening.exceptions, ...ticket.result.closing.exceptions].map((exception) => `${number}: ${exception.message}`))
    }
    for (const entry of await world.context.store?.entriesOfKind('inventory-measured') ?? []) found.push(...entry.body.worksheet.exceptions.map((exception) => `${entry.body.snapshot.tank}: ${exception.message}`))
    expect(found).toEqual([])
  })

  it('voids one ticket for a wrong temperature and replaces it', async () => {
    const voided = tickets.filter((ticket) => ticket.voided !== null)
    expect(voided).toHaveLength(1)
    const [wrong] = voided
    const right = tickets.find((ticket) => ticket.replaces === wrong?.number)
    expect(right).toMatchObject({ tank: 'TK-301', openedAt: wrong?.openedAt, closedAt: wrong?.closedAt })
    const [first, second] = await Promise.all([wrong, right].map(async (line) => (await world.ask('read-ticket', { number: line?.number ?? '' })).ticket))
    expect(first?.closing.temperatures.liquid).not.toBe(second?.closing.temperatures.liquid)
    expect({ ...first?.closing, temperatures: null }).toEqual({ ...second?.closing, temperatures: null })
  })

  it('leaves a ledger that is whole, and tickets that hold', async () => {
    expect(await world.ask('verify-ledger', {})).toMatchObject({ whole: true, entries: imported.entries, tickets: tickets.length, differences: [] })
    const { file } = await world.ask('ticket-document', { number: tickets.at(-1)?.number ?? '' })
    expect(await world.ask('verify-document', { file })).toMatchObject({ valid: true })
  })
})

describe('the reconciliation of September', () => {
  it('shows the hidden problem: TK-201 loses what TK-202 gains, both outside their limits', () => {
    expect(report.oppositePairs.map(({ loses, gains }) => [loses, gains])).toEqual([['TK-201', 'TK-202']])
    expect(report.tanks.filter((tank) => tank.result.verdict !== 'within-limit').map((tank) => [tank.tank, tank.result.verdict]))
      .toEqual([['TK-201', 'loss-outside-limit'], ['TK-202', 'gain-outside-limit']])
  })

  it('shows nothing else: every product is within its limit, every tank was reconciled', () => {
    expect(report.products.map((product) => [product.product, product.result.verdict])).toEqual(['CRUDE', 'GASO95', 'DIESEL', 'FUEL380'].map((code) => [code, 'within-limit']))
    expect(report.missing).toEqual([])
  })

  it('counts the replacement and not the voided ticket', () => {
    const tank = report.tanks.find((one) => one.tank === 'TK-301')
    const numbers = tickets.filter((ticket) => ticket.tank === 'TK-301' && ticket.kind === 'delivery' && ticket.voided === null).map((ticket) => ticket.number)
    expect(tank?.deliveryTickets.toSorted()).toEqual(numbers)
  })

  it('is steady in the two tanks only', () => {
    const oneWay = report.tanks.filter(({ steps }) => {
      const signs = steps.map((step) => Math.sign(Number(step.change.value))).filter((sign) => sign !== 0)
      return Math.abs(signs.reduce((sum, sign) => sum + sign, 0)) > 0.7 * signs.length
    })
    expect(oneWay.map((tank) => tank.tank)).toEqual(['TK-201', 'TK-202'])
  })

  it('is told with its figures in samples/README.md', () => {
    const text = readFileSync(join(SAMPLES, 'README.md'), 'utf8')
    for (const code of ['TK-201', 'TK-202']) {
      const figure = report.tanks.find((tank) => tank.tank === code)?.result.lossGain.value ?? ''
      expect(text).toContain(`some ${Math.abs(Number(figure)).toFixed(0)}`)
    }
  })

  it('goes into its document as data', async () => {
    const { file } = await world.ask('reconciliation-document', { ...SEPTEMBER, format: 'pdf' })
    const folder = mkdtempSync(join(tmpdir(), 'dipledger-report-'))
    try {
      const pdf = join(folder, 'report.pdf')
      writeFileSync(pdf, Buffer.from(file, 'base64'))
      execFileSync('pdfdetach', ['-saveall', '-o', folder, pdf])
      expect(readFileSync(join(folder, 'reconciliation.json'), 'utf8')).toBe(canonicalJson(report))
      const text = execFileSync('pdftotext', ['-layout', pdf, '-'], { encoding: 'utf8' })
      expect(text).toContain('Product has most likely passed from TK-201 into TK-202')
      expect(text).toContain(report.ledger.head.slice(0, 8))
    } finally {
      rmSync(folder, { recursive: true, force: true })
    }
  })
})

describe('the files', () => {
  it('are those that the script makes', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'dipledger-samples-'))
    try {
      execFileSync(process.execPath, [join(SAMPLES, '..', 'scripts', 'make-samples.ts'), folder])
      const kept = Object.entries(await sampleFiles()).filter(([path]) => path !== 'README.md')
      expect(kept.map(([path]) => path).length).toBeGreaterThan(10)
      for (const [path, text] of kept) expect(readFileSync(join(folder, path), 'utf8') === text, path).toBe(true)
    } finally {
      rmSync(folder, { recursive: true, force: true })
    }
  })
})
