import { Migrator } from 'kysely/migration'
import { expect, it } from 'vitest'
import { canonicalJson, chainEntry, GENESIS, type Entry } from '../../core/ledger/index.ts'
import { LedgerFault, openStore } from '../../main/store/index.ts'
import { migrations } from '../../main/store/migrations/index.ts'
import { openPool } from '../../main/store/postgres.ts'
import { serverPlace } from '../../main/store/server-place.ts'
import { setUp } from '../support/ledgers.ts'
import { terminalPosting } from '../support/postings.ts'
import { aDatabase, ask, PASSWORD } from '../support/postgres.ts'

/** A database as a program of the first schema would have it, and how it stands. */
async function anOlderOne(entries: readonly Entry[]): Promise<{ readonly address: string; readonly stands: () => Promise<string> }> {
  const address = await aDatabase()
  const db = openPool(serverPlace(address), 1000)
  await new Migrator({ db, provider: migrations }).migrateTo('2026-11-25-first-ledger')
  await db.destroy()
  for (const { seq, kind, at, by, body, previous, hash } of entries) {
    await ask(address, `insert into entry (seq, kind, at, "by", body, previous, hash) values (${[seq, kind, at, by, canonicalJson(body), previous, hash].map((one) => `'${one}'`).join(', ')})`)
  }
  return { address, stands: async () => JSON.stringify([await ask(address, 'select * from entry order by seq'), await ask(address, 'select name from kysely_migration order by name')]) }
}

const faultOf = (address: string): Promise<unknown> => openStore(address).then(async (store) => store.close(), (error: unknown) => error)

it('a ledger of an older schema on a server is left as it is, and the way over is said', async () => {
  const { address, stands } = await anOlderOne([chainEntry(terminalPosting(), { seq: 1, previous: GENESIS })])
  const before = await stands()
  const fault = await faultOf(address)
  expect(fault).toBeInstanceOf(LedgerFault)
  expect(String(fault)).toMatch(/is of an older version of this program \(before 2026-11-26-evidence\), and a ledger on a server is not changed: nothing was\. .*copy-ledger.*set-storage/)
  expect(String(fault)).not.toContain(PASSWORD)
  expect(await stands()).toBe(before)
})

it('one that holds nothing yet is brought to this version', async () => {
  const { address } = await anOlderOne([])
  const store = await openStore(address)
  expect(await setUp(store)).toHaveLength(3)
  await store.close()
})

it('one of a newer schema is not opened', async () => {
  const address = await aDatabase()
  const store = await openStore(address)
  await setUp(store)
  await store.close()
  await ask(address, "insert into kysely_migration values ('2999-01-01-later', '2999-01-01')")
  expect(String(await faultOf(address))).toMatch(/was made by a newer version of this program .*Update the program\./)
})
