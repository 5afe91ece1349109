import { mkdtempSync, mkdirSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { connect } from 'node:net'
import { networkInterfaces, tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { loopbackBridge } from '../../../renderer/bridge/loopback.ts'
import { serveLoopback, type LoopbackHost } from '../../../main/shells/loopback/server.ts'
import { newToken, sameToken } from '../../../main/shells/loopback/token.ts'
import { pageFilesIn } from '../../../main/shells/page-files.ts'
import { aHost, lawful, send, type Sent } from '../../support/loopback.ts'
import { aWorld, type World } from '../../support/world.ts'

let world: World
let host: LoopbackHost
beforeEach(async () => {
  world = await aWorld()
  host = await aHost(world.context)
})
afterEach(async () => {
  await host.close()
  await world.close()
})

const about = (headers: Readonly<Record<string, string>>): Sent => ({ method: 'POST', path: '/op/about', headers, body: '{}' })
const port = (): string => new URL(host.origin).port

describe('a lawful call', () => {
  it('is answered by lines of JSON, the last of which is the result', async () => {
    const { status, headers, body } = await send(host, { method: 'POST', path: '/op/verify-ledger', headers: lawful(host), body: '{}' })
    expect({ status, type: headers['content-type'] }).toEqual({ status: 200, type: 'application/x-ndjson; charset=utf-8' })
    const lines = body.trimEnd().split('\n').map((line) => JSON.parse(line))
    expect(lines.at(-1)).toMatchObject({ result: { whole: true } })
    for (const line of lines.slice(0, -1)) expect(line).toEqual({ progress: { done: expect.any(Number), of: expect.any(Number), what: expect.any(String) } })
  })

  it('may come without an origin, and under the name localhost', async () => {
    const { origin, ...headers } = lawful(host)
    expect(origin).toBe(host.origin)
    expect((await send(host, about(headers))).status).toBe(200)
    expect((await send(host, about({ ...headers, host: `localhost:${port()}`, origin: `http://localhost:${port()}` }))).status).toBe(200)
  })

  it('through the window\'s own bridge gives a result or throws what was refused', async () => {
    const bridge = loopbackBridge(host.token, (path, init) => fetch(`${host.origin}${String(path)}`, init))
    expect((await bridge.call('about', {})).software.name).toBe('Dipledger')
    await expect(bridge.call('read-ticket', { number: 'CPT-000001' })).rejects.toMatchObject({ name: 'RefusedByMain', findings: [{ code: 'unknown-ticket' }] })
  })

  it('that is no JSON is refused as an input', async () => {
    const { body } = await send(host, { method: 'POST', path: '/op/about', headers: lawful(host), body: '{"half":' })
    expect(JSON.parse(body)).toMatchObject({ refused: { findings: [{ code: 'malformed-input', path: '' }] } })
  })
})

describe('a stranger is turned away', () => {
  it.each<[string, () => Record<string, string>]>([
    ['without a token', () => ({ 'content-type': 'application/json' })],
    ['with a wrong token', () => ({ ...lawful(host), 'x-dipledger-token': newToken() })],
    ['with the beginning of the token', () => ({ ...lawful(host), 'x-dipledger-token': host.token.slice(0, -1) })],
    ['with an empty token', () => ({ ...lawful(host), 'x-dipledger-token': '' })],
    ['under a name that was pointed at this machine', () => ({ ...lawful(host), host: `tickets.example:${port()}` })],
    ['under our name at another port', () => ({ ...lawful(host), host: '127.0.0.1:1' })],
    ['under our name without a port', () => ({ ...lawful(host), host: '127.0.0.1' })],
    ['from another origin', () => ({ ...lawful(host), origin: 'http://tickets.example' })],
    ['from another port of this machine', () => ({ ...lawful(host), origin: 'http://127.0.0.1:1' })],
    ['from a page without an origin of its own', () => ({ ...lawful(host), origin: 'null' })],
    ['from another site, as the browser says', () => ({ ...lawful(host), 'sec-fetch-site': 'cross-site' })],
  ])('%s', async (_who, headers) => {
    const { status, body } = await send(host, about(headers()))
    expect(status).toBe(403)
    expect(JSON.parse(body)).toEqual({ fault: { message: expect.any(String) } })
    expect(body).not.toContain(host.token)
  })

  it('who asks for the page under another name', async () => {
    expect((await send(host, { headers: { host: `tickets.example:${port()}` } })).status).toBe(403)
  })

  it('who sends a form or a text, as a page elsewhere could without asking', async () => {
    for (const type of ['text/plain', 'application/x-www-form-urlencoded', 'multipart/form-data', '']) {
      expect((await send(host, about({ ...lawful(host), 'content-type': type }))).status).toBe(415)
    }
  })

  it('who asks whether a page elsewhere may call: no header says so', async () => {
    const asked = await send(host, { method: 'OPTIONS', path: '/op/about', headers: { origin: 'http://tickets.example', 'access-control-request-method': 'POST' } })
    expect(asked.status).toBe(403)
    const answered = await send(host, about(lawful(host)))
    for (const { headers } of [asked, answered]) expect(Object.keys(headers).filter((name) => name.startsWith('access-control'))).toEqual([])
  })

  it('who calls an operation by GET or writes a file', async () => {
    expect((await send(host, { method: 'GET', path: '/op/about', headers: lawful(host) })).status).toBe(405)
    expect((await send(host, { method: 'PUT', path: '/index.html', headers: lawful(host), body: 'x' })).status).toBe(405)
  })

  it('who sends more than 25 MB, announced or not', async () => {
    const long = Buffer.alloc(26 * 1024 * 1024, 'x')
    const announced = await send(host, { method: 'POST', path: '/op/about', headers: { ...lawful(host), 'content-length': String(long.length) }, body: '{}' }).catch((error: unknown) => error)
    expect(announced).toMatchObject({ status: 413 })
    const streamed = await send(host, { method: 'POST', path: '/op/about', headers: { ...lawful(host), 'transfer-encoding': 'chunked' }, body: long }).catch((error: unknown) => error)
    // the host answers and hangs up; a client that is still writing may see the end of the connection first
    expect(streamed).toSatisfy((got: unknown) => JSON.stringify(got).includes('413') || (got instanceof Error && /ECONNRESET|EPIPE/.test(String('code' in got ? got.code : ''))))
    expect((await send(host, about(lawful(host)))).status).toBe(200)
  }, 60_000)

  it('who comes from outside this machine: nothing listens there', async () => {
    const outside = Object.values(networkInterfaces()).flat().find((address) => address !== undefined && !address.internal && address.family === 'IPv4')
    const address = outside?.address ?? '127.0.0.2'
    const reached = await new Promise<boolean>((resolve) => {
      const socket = connect({ host: address, port: Number(port()), timeout: 2000 }, () => { socket.destroy(); resolve(true) })
      socket.on('error', () => resolve(false)).on('timeout', () => { socket.destroy(); resolve(false) })
    })
    expect(reached).toBe(false)
  })
})

describe('every answer', () => {
  it.each<[string, () => Sent]>([
    ['a page', () => ({})], ['a call', () => about(lawful(host))], ['a file that is not there', () => ({ path: '/nothing' })], ['a stranger', () => about({})],
  ])('to %s carries the rules of the page', async (_to, sent) => {
    const { headers } = await send(host, sent())
    expect(headers).toMatchObject({
      'x-content-type-options': 'nosniff', 'referrer-policy': 'no-referrer', 'cross-origin-opener-policy': 'same-origin', 'cross-origin-resource-policy': 'same-origin',
    })
    const policy = String(headers['content-security-policy'])
    expect(policy).toContain("default-src 'self'")
    expect(policy).toContain("frame-ancestors 'none'")
    expect(policy).toContain("script-src 'self';")
  })
})

describe('the files of the window', () => {
  it('are those of its folder and no others, whatever the path', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'dipledger-pages-'))
    const pages = join(folder, 'renderer')
    mkdirSync(join(pages, 'assets'), { recursive: true })
    writeFileSync(join(pages, 'index.html'), '<title>Dipledger</title>')
    writeFileSync(join(pages, 'assets', 'app.js'), 'export {}')
    writeFileSync(join(folder, 'secret.txt'), 'the ledger')
    symlinkSync(join(folder, 'secret.txt'), join(pages, 'linked.txt'))
    const served = await serveLoopback({ context: world.context, files: await pageFilesIn(pages) })
    try {
      expect(await send(served, {})).toMatchObject({ status: 200, body: '<title>Dipledger</title>', headers: { 'content-type': 'text/html; charset=utf-8' } })
      expect(await send(served, { path: '/assets/app.js?v=1' })).toMatchObject({ status: 200, headers: { 'content-type': 'text/javascript; charset=utf-8' } })
      expect(await send(served, { method: 'HEAD' })).toMatchObject({ status: 200, body: '' })
      for (const path of ['/../secret.txt', '/%2e%2e/secret.txt', '/..%2fsecret.txt', '/assets/../../secret.txt', '//secret.txt', '/..\\secret.txt', '/linked.txt', '/assets', '/assets/', '/index.html/', '/\0', '/%00', `${folder}/secret.txt`]) {
        const got = await send(served, { path: path.replaceAll('\0', '%00') })
        expect({ path, status: got.status, told: got.body.includes('the ledger') }).toEqual({ path, status: 404, told: false })
      }
    } finally {
      await served.close()
      rmSync(folder, { recursive: true, force: true })
    }
  })
})

describe('a caller that goes away', () => {
  it('cancels its call', async () => {
    let aborted: boolean | undefined
    const { store } = world.context
    if (!store) throw new Error('no ledger')
    Object.assign(store, { check: async (_progress: unknown, signal: AbortSignal) => {
      while (!signal.aborted) await wait(5)
      aborted = true
      signal.throwIfAborted()
    } })
    const abort = new AbortController()
    const asked = fetch(`${host.origin}/op/verify-ledger`, { method: 'POST', headers: { 'content-type': 'application/json', 'x-dipledger-token': host.token }, body: '{}', signal: abort.signal }).then((response) => response.text())
    await wait(50)
    abort.abort()
    await expect(asked).rejects.toThrow()
    await expect.poll(() => aborted).toBe(true)
    expect(world.log).toEqual([])
  })
})

describe('a token', () => {
  it('is another one at every start and long enough not to be guessed', () => {
    expect(newToken()).not.toBe(newToken())
    expect(Buffer.from(newToken(), 'base64url')).toHaveLength(32)
  })

  it('is the same only when it is the same', () => {
    expect([sameToken('a', 'a'), sameToken('a', 'b'), sameToken('', ''), sameToken(undefined, ''), sameToken(undefined, 'a')]).toEqual([true, false, true, false, false])
  })
})
