import { createHash } from 'node:crypto'
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Entry } from '../../../core/ledger/index.ts'
import { aFullMonth } from '../../support/a-full-month.ts'
import { aPostedLedger, replaced, rewrite } from '../../support/attack.ts'
import { dump } from '../../support/evidence.ts'
import { aFolder } from '../../support/ledgers.ts'
import { aWorld, type World } from '../../support/world.ts'

const folder = aFolder()
let world: World
let lines: readonly string[]
let written: { readonly head: string; readonly entries: number; readonly documents: number; readonly sha256: string; readonly path: string }
let count = 0

beforeAll(async () => {
  world = await aFullMonth()
  await world.ask('save-draft', { id: 'd-1', kind: 'transfer', title: 'Receipt', body: { level: '41 ft' } })
  written = await world.ask('export-ledger', { to: join(folder.path, 'all.jsonl') })
  lines = readFileSync(written.path, 'utf8').split('\n').slice(0, -1)
}, 60_000)
afterAll(async () => {
  await world.close()
  folder.remove()
})

async function importOf(text: string | Uint8Array): Promise<Awaited<ReturnType<World['call']>> & { readonly to: string }> {
  const [from, to] = [join(folder.path, `lines ${(count += 1)}.jsonl`), join(folder.path, `new ${count}`, 'ledger.db')]
  writeFileSync(from, text)
  return { ...await world.call('import-ledger', { from, to }), to }
}

/** What is said of the lines after they were changed: the line, and what is wrong with it. */
async function saidOf(change: (lines: string[]) => void): Promise<readonly [path: string, value: string]> {
  const changed = [...lines]
  change(changed)
  return saidOfText(changed.map((line) => `${line}\n`).join(''))
}

async function saidOfText(text: string | Uint8Array): Promise<readonly [path: string, value: string]> {
  const answer = await importOf(text)
  if (!('refused' in answer)) throw new Error(JSON.stringify(answer))
  const [finding] = answer.refused.findings
  expect(finding?.code).toBe('ledger-line')
  expect(existsSync(answer.to)).toBe(false)
  expect(existsSync(join(answer.to, '..')) ? readdirSync(join(answer.to, '..')) : []).toEqual([])
  return [finding?.path ?? '', finding?.value ?? '']
}

const lineOf = (start: string): number => lines.findIndex((line) => line.startsWith(start)) + 1

describe('export-ledger', () => {
  it('writes a header, each entry, each document behind its ticket, and an end', () => {
    expect(lines[0]).toBe('{"ledger":{"form":"dipledger-ledger","version":1}}')
    expect(lines.at(-1)).toBe(`{"end":{"documents":${written.documents},"entries":${written.entries},"head":"${written.head}"}}`)
    expect(lines.filter((line) => line.startsWith('{"entry":'))).toHaveLength(written.entries)
    expect(lines.filter((line) => line.startsWith('{"document":'))).toHaveLength(written.documents)
    expect(createHash('sha256').update(readFileSync(written.path)).digest('hex')).toBe(written.sha256)
  })

  it('writes the text of an entry as it was hashed', () => {
    let previous = '0'.repeat(64)
    for (const line of lines) {
      const [, text, hash] = /^\{"entry":(.*),"hash":"([0-9a-f]{64})"\}$/.exec(line) ?? []
      if (text === undefined || hash === undefined) continue
      expect(createHash('sha256').update(Buffer.from(previous, 'hex')).update(text).digest('hex')).toBe(hash)
      previous = hash
    }
    expect(previous).toBe(written.head)
  })

  it('writes the same bytes each time, and no key, passphrase or draft', async () => {
    const again = await world.ask('export-ledger', { to: join(folder.path, 'again.jsonl') })
    expect(again.sha256).toBe(written.sha256)
    const text = lines.join('\n')
    const key: unknown = JSON.parse((await world.context.store!.protectedKey('m-duarte'))!)
    for (const secret of Object.values(key as Readonly<Record<string, unknown>>).filter((one) => typeof one === 'string' && one.length > 12)) expect(text).not.toContain(secret)
    expect(text).not.toContain('"d-1"')
  })
})

describe('import-ledger', () => {
  it('makes a ledger with the same head, in which every entry, document and projection is the same', async () => {
    const answer = await importOf(readFileSync(written.path))
    expect(answer).toMatchObject({ result: { head: written.head, entries: written.entries, tickets: written.documents } })
    await world.context.store!.copyTo(join(folder.path, 'same.db'), () => undefined, new AbortController().signal)
    expect(dump(answer.to)).toBe(dump(join(folder.path, 'same.db')))
  })

  it('makes an empty ledger of an empty one', async () => {
    const empty = await aWorld()
    const { path, head, entries } = await empty.ask('export-ledger', { to: join(folder.path, 'empty.jsonl') })
    await empty.close()
    expect([head, entries]).toEqual(['0'.repeat(64), 0])
    expect(await importOf(readFileSync(path))).toMatchObject({ result: { head, entries: 0, tickets: 0 } })
  })

  it('refuses an altered entry, whoever wrote the new hash behind it', async () => {
    const at = 3
    expect(await saidOf((all) => { all[at] = all[at]!.replace('"by":"', '"by":"x') })).toEqual([`line ${at + 1}`, expect.stringContaining('entry 3 was altered: its hash is')])
    const resealed = await saidOf((all) => {
      const [, text = ''] = /^\{"entry":(.*),"hash":"([0-9a-f]{64})"\}$/.exec(all[at]!.replace('"by":"', '"by":"x')) ?? []
      const previous = /"previous":"([0-9a-f]{64})"/.exec(text)?.[1] ?? ''
      all[at] = `{"entry":${text},"hash":"${createHash('sha256').update(Buffer.from(previous, 'hex')).update(text).digest('hex')}"}`
    })
    expect(resealed).toEqual([`line ${at + 2}`, expect.stringContaining('entry 4 was altered: its previous is')])
  })

  it('refuses an entry that says the same in other words', async () => {
    expect(await saidOf((all) => { all[1] = all[1]!.replace('{"entry":', '{ "entry":') })).toEqual(['line 2', expect.stringContaining('it is not the canonical text')])
  })

  it.each([
    ['missing', (all: string[]) => { all.splice(3, 1) }, ['line 4', 'entry 3 is missing before entry 4']],
    ['doubled', (all: string[]) => { all.splice(3, 0, all[2]!) }, ['line 4', 'entry 2 stands here again or out of order; entry 3 is expected']],
    ['out of order', (all: string[]) => { all.splice(2, 2, all[3]!, all[2]!) }, ['line 3', 'entry 2 is missing before entry 3']],
    ['no JSON', (all: string[]) => { all[2] = 'entry 2' }, ['line 3', 'it is no line of an exported ledger']],
    ['empty', (all: string[]) => { all.splice(2, 0, '') }, ['line 3', 'it is no line of an exported ledger']],
  ])('refuses a line that is %s', async (_, change, expected) => {
    expect(await saidOf(change)).toEqual(expected)
  })

  it('refuses a document that is missing, doubled, another one, or not as it was signed', async () => {
    const at = lineOf('{"document":') - 1
    const next = lines.findIndex((line, i) => i > at && line.startsWith('{"document":'))
    expect(await saidOf((all) => { all.splice(at, 1) })).toEqual([`line ${at + 1}`, expect.stringMatching(/^the document of entry \d+ is missing$/)])
    expect(await saidOf((all) => { all.splice(at, 0, all[at]!) })).toEqual([`line ${at + 2}`, 'a document stands here, though the line before is no ticket'])
    expect(await saidOf((all) => { all[at] = lines[next]! })).toEqual([`line ${at + 1}`, expect.stringContaining('stands where that of entry')])
    expect(await saidOf((all) => { all[at] = all[at]!.replace('"bytes":"JVBE', '"bytes":"JVBF') })).toEqual([`line ${at + 1}`, expect.stringContaining('was altered: its SHA-256 is')])
  })

  it('refuses an end that is missing, cut short, wrong, or not the end', async () => {
    const end = lines.length
    expect(await saidOf((all) => { all.pop() })).toEqual([`line ${end}`, 'it is missing: an entry or the end is expected'])
    expect(await saidOfText(lines.join('\n'))).toEqual([`line ${end}`, 'it is cut short: no line end follows it'])
    expect(await saidOf((all) => { all[end - 1] = all[end - 1]!.replace(/"entries":\d+/, '"entries":4') })).toEqual([`line ${end}`, expect.stringContaining('the end gives 4 for entries')])
    expect(await saidOf((all) => { all.splice(end - 3, 2) })).toEqual([`line ${end - 2}`, expect.stringMatching(/^the end gives \d+ for entries; the lines before give \d+$/)])
    expect(await saidOf((all) => { all.push(all[1]!) })).toEqual([`line ${end + 1}`, 'something follows the end'])
    expect(await saidOfText(Buffer.concat([Buffer.from(`${lines[0]}\n`), Buffer.from([0x7b, 0xff, 0x0a])]))).toEqual(['line 2', 'it is no text in UTF-8'])
  })

  it('refuses a form of a later version', async () => {
    expect(await saidOf((all) => { all[0] = all[0]!.replace('"version":1', '"version":2') })).toEqual(['line 1', expect.stringContaining('it is not {"ledger"')])
  })

  it('refuses a chain that holds but does not fit: a ticket number left out', async () => {
    // the chain is made again behind the change, as anybody could who wanted to
    const rechained = [...lines]
    let previous = '0'.repeat(64)
    const changed = rechained.map((line) => {
      const [, text] = /^\{"entry":(.*),"hash":"([0-9a-f]{64})"\}$/.exec(line) ?? []
      if (text === undefined) return line.startsWith('{"end":') ? line.replace(/"head":"[0-9a-f]+"/, `"head":"${previous}"`) : line
      const other = text.replaceAll('CPT-000002', 'CPT-000092').replace(/"previous":"[0-9a-f]{64}"(?=,"seq":\d+\}$)/, `"previous":"${previous}"`)
      const hash = createHash('sha256').update(Buffer.from(previous, 'hex')).update(other).digest('hex')
      previous = hash
      return `{"entry":${other},"hash":"${hash}"}`
    })
    expect(await saidOfText(changed.map((line) => `${line}\n`).join(''))).toEqual([expect.stringMatching(/^line \d+$/), expect.stringContaining('does not fit the ledger')])
  })

  it.each<[string, number, RegExp]>([
    ['an inventory', 31, /^entry 31: worksheet, lines, NSV, value: .* stands; the ledger gives /],
    ['a ticket', 40, /^entry 40: result, moved, nsv, value: .* stands; the ledger gives .*computed by version/],
  ])('refuses a figure of %s that the entries before it do not give, chain and all made anew, by its line', async (_, seq, said) => {
    const path = await aPostedLedger(join(folder.path, `changed ${seq}.db`))
    await rewrite(path, (entry) => (entry.seq === seq ? otherFigure(entry) : entry))
    const changed = await aWorld({ copyOf: path })
    const { path: from } = await changed.ask('export-ledger', { to: join(folder.path, `changed ${seq}.jsonl`) })
    await changed.close()
    const text = readFileSync(from, 'utf8')
    const line = text.split('\n').findIndex((one) => one.includes(`,"seq":${seq}},"hash":`)) + 1
    expect(await saidOfText(text)).toEqual([`line ${line}`, expect.stringMatching(said)])
  })

  it('refuses what cannot be computed with: a capacity table without numbers', async () => {
    const path = await aPostedLedger(join(folder.path, 'no numbers.db'))
    await rewrite(path, (entry) => (entry.kind === 'tank-set' ? { ...entry, body: { ...entry.body, tank: { ...entry.body.tank, capacityTable: { ...entry.body.tank.capacityTable, rows: [['0', 'full'], ['high', '1e999999']] } } } } : entry))
    const changed = await aWorld({ copyOf: path })
    const { path: from } = await changed.ask('export-ledger', { to: join(folder.path, 'no numbers.jsonl') })
    await changed.close()
    expect(await saidOfText(readFileSync(from))).toEqual([expect.stringMatching(/^line \d+$/), expect.stringMatching(/^entry \d+(: | cannot be made again: )/)])
  })

  it('asks for a file that is there', async () => {
    expect(await world.call('import-ledger', { from: join(folder.path, 'nothing.jsonl'), to: join(folder.path, 'nowhere', 'ledger.db') })).toMatchObject({ refused: { findings: [{ code: 'missing-value', path: 'from' }] } })
  })
})

/** An inventory or a ticket with another net standard volume. */
function otherFigure(entry: Entry): Entry {
  if (entry.kind === 'inventory-measured') {
    const { value } = entry.body.worksheet.quantity.nsv
    return { ...entry, body: { ...entry.body, worksheet: replaced(entry.body.worksheet, `"${value}"`, `"9${value}"`) } }
  }
  if (entry.kind !== 'ticket-posted') throw new Error(`a ${entry.kind}`)
  const { ticket } = entry.body
  const { value, unit } = ticket.result.moved.nsv
  return { ...entry, body: { ...entry.body, ticket: { ...ticket, result: { ...ticket.result, moved: { ...ticket.result.moved, nsv: { value: `9${value}`, unit } } } } } }
}

describe('a line that was made to do harm', () => {
  const nested = (depth: number): string => `{"entry":{"a":${'['.repeat(depth)}${']'.repeat(depth)}},"hash":"${'0'.repeat(64)}"}`
  const second = (change: (line: string) => string) => (all: string[]): void => { all[1] = change(all[1]!) }

  it.each<[string, (all: string[]) => void, number, RegExp]>([
    ['a name that stands twice', second((line) => line.replace('{"entry":{"at":', '{"entry":{"at":"2020-01-01T00:00:00Z","at":')), 2, /not the canonical text/],
    ['a name that stands twice, deep inside', second((line) => line.replace('"code":"CPT"', '"code":"CPT","code":"CPT"')), 2, /not the canonical text/],
    ['the name of every object’s prototype', second((line) => line.replace('{"entry":{', '{"entry":{"__proto__":{"kind":"tank-set"},')), 2, /not the canonical text|it is no entry/],
    ['the same, deep inside', second((line) => line.replace('"terminal":{', '"terminal":{"__proto__":{},')), 2, /not the canonical text|it is no entry/],
    ['a number too large to be one', second((line) => line.replace(/"seq":1}/, '"seq":1e400}')), 2, /no canonical text: .*Infinity/],
    ['a number that cannot be held', second((line) => line.replace(/"seq":1}/, '"seq":9007199254740993}')), 2, /not the canonical text/],
    ['a number in other digits', second((line) => line.replace(/"seq":1}/, '"seq":1.0}')), 2, /not the canonical text/],
    ['the number of an entry below nothing', second((line) => line.replace(/"seq":1}/, '"seq":-1}')), 2, /it is no entry: seq/],
    ['half a character', second((line) => line.replace('"by":"', '"by":"\\ud800')), 2, /no canonical text: .*surrogate/],
    ['a letter that is escaped', second((line) => line.replace('"by":"M', '"by":"\\u004d')), 2, /not the canonical text/],
    ['lists in lists', second(() => nested(600)), 2, /no canonical text: .*nested too deeply/],
    ['lists in lists in lists, without end', second(() => nested(400_000)), 2, /no canonical text: .*nested too deeply/],
    ['brackets that nobody closes', second(() => '['.repeat(400_000)), 2, /no line of an exported ledger/],
    ['a kind that nobody knows', second((line) => line.replace('"kind":"terminal-set"', '"kind":"ticket-unposted"')), 2, /it is no entry: kind/],
    ['an entry that is a list', second(() => `{"entry":[],"hash":"${'0'.repeat(64)}"}`), 2, /no line of an exported ledger/],
    ['an entry that is nothing', second(() => `{"entry":null,"hash":"${'0'.repeat(64)}"}`), 2, /no line of an exported ledger/],
    ['a hash in capitals', second((line) => line.replace(/"hash":"([0-9a-f]{64})"}$/, (_, hash: string) => `"hash":"${hash.toUpperCase()}"}`)), 2, /no line of an exported ledger/],
    ['a member more', second((line) => line.replace(/}$/, ',"more":1}')), 2, /no line of an exported ledger/],
    ['a mark of byte order before the first', (all) => { all[0] = `\ufeff${all[0]}` }, 1, /it is not {"ledger"/],
    ['ends of another system', (all) => { for (const [i, line] of all.entries()) all[i] = `${line}\r` }, 1, /it is not {"ledger"/],
    ['an end of another system', second((line) => `${line}\r`), 2, /not the canonical text/],
    ['nothing at all', (all) => { all[1] = '\0' }, 2, /no line of an exported ledger/],
  ])('%s is refused', async (_, change, line, said) => {
    expect(await saidOf(change)).toEqual([`line ${line}`, expect.stringMatching(said)])
  })

  it.each<[string, (base64: string) => string, RegExp]>([
    ['with signs of another alphabet', (text) => text.replace(/[A-Z]/, '-'), /no line of an exported ledger/],
    ['broken into lines', (text) => `${text.slice(0, 76)}\\n${text.slice(76)}`, /no line of an exported ledger/],
    ['without the signs that fill it up', (text) => text.replace(/=+$/, ''), /no line of an exported ledger/],
    ['with bits that nobody reads', (text) => text.replace(/.(?==+$)/, (sign) => String.fromCharCode(sign.charCodeAt(0) + 1)), /not the one text of its bytes/],
  ])('base64 %s is refused', async (_, change, said) => {
    const at = lines.findIndex((line) => /^\{"document":\{"bytes":"[^"]*="/.test(line))
    expect(at).toBeGreaterThan(0)
    expect(await saidOf((all) => { all[at] = all[at]!.replace(/(?<="bytes":")[^"]+/, change) })).toEqual([`line ${at + 1}`, expect.stringMatching(said)])
  })

  it('a line that never ends is given up', async () => {
    expect(await saidOfText(Buffer.concat([Buffer.from(`${lines[0]}\n`), Buffer.alloc((64 << 20) + (2 << 20), 'a')]))).toEqual(['line 2', 'it is longer than any line of a ledger'])
  })
})
