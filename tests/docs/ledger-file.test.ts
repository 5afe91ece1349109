import { execFileSync, spawnSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { copyFileSync, mkdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { ROOT } from '../boundaries/sources-tree.ts'
import { aFolder } from '../support/ledgers.ts'
import { OLD_LEDGERS } from '../support/old-ledgers.ts'
import { aWorld } from '../support/world.ts'

const TEXT = readFileSync(join(ROOT, 'docs/ledger-file.md'), 'utf8')
/** Commands of the document, each with the output that it is said to have. */
const EXAMPLES = [...TEXT.matchAll(/```bash\n([\s\S]*?)```[\s\S]*?```text\n([\s\S]*?)```/g)].map(([, commands = '', output = '']) => ({ commands, output }))
const folder = aFolder()
const [oldest] = OLD_LEDGERS
let tables: readonly { readonly name: string; readonly columns: readonly string[] }[]

/** In the folder: a backup of the oldest ledger that is kept, brought to this version, and its export. */
beforeAll(async () => {
  const world = await aWorld({ copyOf: oldest?.copyTo(join(folder.path, 'old.db')) ?? '' })
  const work = join(folder.path, 'work')
  mkdirSync(work)
  const { path } = await world.ask('backup-now', { folder: work })
  copyFileSync(path, join(work, 'backup.db'))
  await world.ask('export-ledger', { to: join(work, 'all.jsonl') })
  await world.close()
  const raw = new DatabaseSync(join(work, 'backup.db'), { readOnly: true })
  tables = raw.prepare("select name from sqlite_schema where type = 'table' and name not like 'sqlite_%' order by name").all()
    .map(({ name }) => ({ name: String(name), columns: raw.prepare(`pragma table_info(${String(name)})`).all().map((column) => String(column['name'])) }))
  raw.close()
}, 60_000)
afterAll(folder.remove)

function missing(...programs: readonly string[]): boolean {
  return programs.some((program) => spawnSync(program, ['--version']).error !== undefined)
}

describe('docs/ledger-file.md', () => {
  it('names every table and column, and none that is not there', () => {
    const sections = new Map([...TEXT.matchAll(/^### `(\w+)`\n([\s\S]*?)(?=^#|$(?![\s\S]))/gm)].map(([, name = '', body = '']) => [name, body]))
    expect([...sections.keys()].toSorted()).toEqual(tables.map(({ name }) => name))
    for (const { name, columns } of tables) {
      const named = new Set([...(sections.get(name) ?? '').matchAll(/`(\w+)`/g)].map((match) => match[1] ?? ''))
      expect(columns.filter((column) => !named.has(column)), name).toEqual([])
    }
  })

  it('has three examples', () => {
    expect(EXAMPLES).toHaveLength(3)
  })

  // Without these programs the documented commands cannot be run; the reader below checks the same without them.
  it.skipIf(missing('bash', 'sqlite3', 'jq', 'sha256sum')).each(EXAMPLES)('the commands of example %# print what is said', ({ commands, output }) => {
    expect(execFileSync('bash', ['-euo', 'pipefail', '-c', commands], { cwd: join(folder.path, 'work'), encoding: 'utf8' })).toBe(output)
  })

  it('is enough to read a ledger: a reader of its own finds every hash and document', () => {
    const sorted = (value: unknown): unknown => Array.isArray(value) ? value.map(sorted)
      : typeof value === 'object' && value !== null ? Object.fromEntries(Object.entries(value).toSorted(([a], [b]) => (a < b ? -1 : 1)).map(([key, member]) => [key, sorted(member)])) : value
    const canonical = (value: unknown): string => JSON.stringify(sorted(value))
    const raw = new DatabaseSync(join(folder.path, 'work', 'backup.db'), { readOnly: true })
    let [previous, documents] = ['0'.repeat(64), 0]
    for (const row of raw.prepare('select * from entry order by seq').all()) {
      const { seq, kind, at, by, body, hash, origin } = row
      expect(canonical(JSON.parse(String(body)))).toBe(body)
      const text = canonical({ seq, kind, at, by, body: JSON.parse(String(body)), previous, ...origin === null ? {} : { origin: JSON.parse(String(origin)) } })
      expect(row['previous']).toBe(previous)
      expect(createHash('sha256').update(Buffer.from(previous, 'hex')).update(text, 'utf8').digest('hex')).toBe(hash)
      previous = String(hash)
      if (kind !== 'ticket-posted') continue
      const bytes = raw.prepare('select bytes from document where seq = ?').get(Number(seq))?.['bytes']
      expect(createHash('sha256').update(bytes instanceof Uint8Array ? bytes : '').digest('hex')).toBe(JSON.parse(String(body)).document.sha256)
      documents += 1
    }
    raw.close()
    expect(previous).toBe(oldest?.head)
    expect(documents).toBe(oldest?.tickets.length)
  })
})
