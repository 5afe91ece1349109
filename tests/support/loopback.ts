import { request, type IncomingHttpHeaders } from 'node:http'
import { text } from 'node:stream/consumers'
import type { Context } from '../../main/operations/context.ts'
import { serveLoopback, type LoopbackHost } from '../../main/shells/loopback/server.ts'
import type { PageFiles } from '../../main/shells/page-files.ts'

/** A window of one page. */
export const onePage: PageFiles = async (path) => (path === '/' || path === '/index.html' ? { bytes: Buffer.from('<!doctype html><title>Dipledger</title>'), type: 'text/html; charset=utf-8' } : undefined)

export function aHost(context: Context): Promise<LoopbackHost> {
  return serveLoopback({ context, files: onePage })
}

export interface Sent { readonly method?: string; readonly path?: string; readonly headers?: Readonly<Record<string, string>>; readonly body?: string | Buffer }
export interface Got { readonly status: number; readonly headers: IncomingHttpHeaders; readonly body: string }

/** One request to a host, with whatever headers, as no browser would let a page send it. */
export function send(host: LoopbackHost, { method = 'GET', path = '/', headers = {}, body }: Sent): Promise<Got> {
  const { port } = new URL(host.origin)
  return new Promise((resolve, reject) => {
    const asked = request({ host: '127.0.0.1', port, method, path, headers, agent: false }, (response) => {
      text(response).then((read) => resolve({ status: response.statusCode ?? 0, headers: response.headers, body: read }), reject)
    })
    asked.on('error', reject)
    asked.end(body)
  })
}

/** The headers of a lawful call. */
export function lawful(host: LoopbackHost): Record<string, string> {
  return { 'content-type': 'application/json', 'x-dipledger-token': host.token, origin: host.origin }
}
