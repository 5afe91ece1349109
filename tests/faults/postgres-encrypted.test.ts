import { chmodSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest'
import { openStore } from '../../main/store/index.ts'
import { run } from '../support/outside-programs.ts'
import { aServer, ask, giveToServer, PASSWORD, type TestServer } from '../support/postgres.ts'

const folder = mkdtempSync(join(tmpdir(), 'dipledger-certificates-'))
const [key, certificate, other] = ['key.pem', 'certificate.pem', 'other.pem'].map((name) => join(folder, name)) as [string, string, string]
let server: TestServer
let address = ''

beforeAll(async () => {
  chmodSync(folder, 0o755)
  for (const [name, keyFile, file] of [['localhost', key, certificate], ['elsewhere', join(folder, 'other-key.pem'), other]] as const) {
    run('openssl', 'req', '-x509', '-newkey', 'rsa:2048', '-nodes', '-days', '30', '-subj', `/CN=${name}`, '-addext', `subjectAltName=DNS:${name}`, '-keyout', keyFile, '-out', file)
  }
  giveToServer(key)
  server = await aServer()
  address = await server.database()
  for (const text of [`alter system set ssl_cert_file = '${certificate}'`, `alter system set ssl_key_file = '${key}'`, 'alter system set ssl = on', 'select pg_reload_conf()']) await ask(address, text)
  await vi.waitFor(async () => { expect(await ask(address, 'show ssl')).toEqual([{ ssl: 'on' }]) }, { timeout: 10_000 })
})
afterAll(() => {
  server.remove()
  rmSync(folder, { recursive: true })
})

const at = (host: string, settings: string): string => `${address.replace('127.0.0.1', host)}?${settings.replace('OURS', certificate).replace('OTHER', other)}`

/** @see https://www.postgresql.org/docs/15/libpq-ssl.html table 34.1: what each mode checks */
describe('the connection to a server with a certificate for localhost', () => {
  it.each([
    ['127.0.0.1', 'sslmode=disable', 0], ['127.0.0.1', 'sslmode=require', 1], ['127.0.0.1', 'sslmode=verify-ca&sslrootcert=OURS', 1], ['localhost', 'sslmode=verify-full&sslrootcert=OURS', 1],
  ] as const)('%s, %s: encrypted connections %i', async (host, settings, encrypted) => {
    const store = await openStore(at(host, settings))
    expect(await ask(address, "select count(*)::int as encrypted from pg_stat_ssl join pg_stat_activity using (pid) where ssl and application_name = 'dipledger'")).toEqual([{ encrypted }])
    await store.close()
  })

  it.each([
    ['127.0.0.1', 'sslmode=verify-ca'], ['127.0.0.1', 'sslmode=verify-full&sslrootcert=OURS'], ['localhost', 'sslmode=verify-full&sslrootcert=OTHER'], ['localhost', 'sslmode=verify-full'], ['localhost', 'sslmode=require&sslrootcert=OTHER'],
  ])('%s, %s: is not trusted', async (host, settings) => {
    const told = await openStore(at(host, settings)).then(() => 'it was', (error: unknown) => String(error))
    expect(told).toMatch(/No encrypted connection .* Check sslmode and sslrootcert/)
    expect(told).not.toContain(PASSWORD)
  })
})
