import { createServer, type ServerResponse } from 'node:http'
import { afterEach, describe, expect, it } from 'vitest'
import { CallCancelled, FaultInMain, RefusedByMain } from '../../../renderer/bridge/bridge.ts'
import { loopbackBridge } from '../../../renderer/bridge/loopback.ts'

const closing: (() => void)[] = []
afterEach(() => closing.splice(0).forEach((close) => close()))

interface Heard { readonly path: string; readonly token: string; readonly body: string; readonly gone: Promise<void> }

/** A host that answers every call in one way, and what it heard. */
async function hostThat(answers: (response: ServerResponse) => void): Promise<{ readonly request: typeof fetch; readonly heard: Heard[] }> {
  const heard: Heard[] = []
  const server = createServer((request, response) => {
    let body = ''
    request.on('data', (part: Buffer) => { body += part.toString() })
    request.on('end', () => {
      const gone = new Promise<void>((resolve) => { response.on('close', resolve) })
      heard.push({ path: request.url ?? '', token: String(request.headers['x-dipledger-token']), body, gone })
      answers(response)
    })
  })
  await new Promise<void>((resolve) => { server.listen(0, '127.0.0.1', resolve) })
  closing.push(() => { server.closeAllConnections(); server.close() })
  const address = server.address()
  const port = typeof address === 'object' && address ? address.port : 0
  return { heard, request: (path, init) => fetch(`http://127.0.0.1:${port}${String(path)}`, init) }
}

const finding = { code: 'missing-value', path: 'number', value: '', limit: 'a number', clause: 'HOUSE', message: 'number is missing: a number.' }

describe('a call through the loopback host settles', () => {
  it('with the result, after every step on the way', async () => {
    const { request, heard } = await hostThat((response) => {
      response.write('{"progress":{"done":1,"of":2,"what":"signing"}}\n{"progress":{"done":2,"of":2,')
      setTimeout(() => response.end('"what":"booking"}}\n{"result":{"savedAt":"2026-03-14T06:10:00Z"}}\n'), 20)
    })
    const steps: string[] = []
    const result = await loopbackBridge('secret', request).call('save-draft', { id: 'a', kind: 'transfer', title: '', body: {} }, { progress: (step) => steps.push(step.what) })
    expect(result).toEqual({ savedAt: '2026-03-14T06:10:00Z' })
    expect(steps).toEqual(['signing', 'booking'])
    expect(heard[0]).toMatchObject({ path: '/op/save-draft', token: 'secret', body: '{"id":"a","kind":"transfer","title":"","body":{}}' })
  })

  it('with what was refused, each with its sentence', async () => {
    const { request } = await hostThat((response) => response.end(`${JSON.stringify({ refused: { findings: [finding] } })}\n`))
    const call = loopbackBridge('t', request).call('read-ticket', { number: '' })
    await expect(call).rejects.toBeInstanceOf(RefusedByMain)
    await expect(call).rejects.toMatchObject({ findings: [finding], message: finding.message })
  })

  it('with a fault of the other side, even under a status that is no success', async () => {
    const { request } = await hostThat((response) => response.writeHead(403).end('{"fault":{"message":"The token is missing."}}\n'))
    await expect(loopbackBridge('', request).call('terminal', {})).rejects.toThrow(new FaultInMain('The token is missing.'))
  })

  it.each([
    ['nothing at all', (response: ServerResponse) => response.end()],
    ['steps but no result', (response: ServerResponse) => response.end('{"progress":{"done":1,"of":2,"what":"signing"}}\n')],
    ['half a line', (response: ServerResponse) => response.end('{"resu')],
    ['something else', (response: ServerResponse) => response.end('<html></html>')],
    ['a cut connection', (response: ServerResponse) => { response.write('{"progress":{"done":1,"of":2,"what":"signing"}}\n'); setTimeout(() => response.destroy(), 20) }],
    ['a connection cut before any answer', (response: ServerResponse) => response.destroy()],
  ])('as a fault when the answer is %s', async (_, answers) => {
    const { request } = await hostThat(answers)
    await expect(loopbackBridge('t', request).call('terminal', {})).rejects.toBeInstanceOf(FaultInMain)
  })

  it('as a fault when no host listens', async () => {
    await expect(loopbackBridge('t', (path, init) => fetch(`http://127.0.0.1:9${String(path)}`, init)).call('terminal', {})).rejects.toBeInstanceOf(FaultInMain)
  })

  it('as cancelled when the window gives up, and the host hears the connection close', async () => {
    const { request, heard } = await hostThat((response) => response.write('{"progress":{"done":1,"of":9,"what":"checking"}}\n'))
    const abort = new AbortController()
    const call = loopbackBridge('t', request).call('verify-ledger', {}, { signal: abort.signal, progress: () => abort.abort() })
    await expect(call).rejects.toBeInstanceOf(CallCancelled)
    await expect(heard[0]?.gone).resolves.toBeUndefined()
  })
})
