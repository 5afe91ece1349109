import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http'
import { refusal } from '../../operations/answer.ts'
import { callOperation } from '../../operations/call-operation.ts'
import type { Context } from '../../operations/context.ts'
import { SECURITY_HEADERS } from '../page-policy.ts'
import type { PageFiles } from '../page-files.ts'
import { jsonIn, readBody } from './body.ts'
import { turnAwayCall, turnAwayStranger, type Host, type TurnedAway } from './guard.ts'
import { newToken } from './token.ts'

/** The address of this machine for itself. */
export const LOOPBACK = '127.0.0.1'
const CALL_PATH = '/op/'

export interface LoopbackOptions {
  readonly context: Context
  readonly files: PageFiles
  /** Any free one when absent. */
  readonly port?: number
}

/** A host that runs. */
export interface LoopbackHost {
  readonly origin: string
  readonly token: string
  /** The one address to open; the token stands behind the #, which a browser never sends. */
  readonly address: string
  close(): Promise<void>
}

/** Serves the window and its operations to this machine only. */
export async function serveLoopback({ context, files, port = 0 }: LoopbackOptions): Promise<LoopbackHost> {
  const token = newToken()
  const server = createServer()
  server.listen(port, LOOPBACK)
  await new Promise<void>((resolve, reject) => server.once('listening', resolve).once('error', reject))
  const host: Host = { port: portOf(server), token }
  server.on('request', (request, response) => {
    answer(request, response, host, { context, files }).catch((error: unknown) => {
      context.log(`${context.now()} fault in the loopback host: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`)
      response.destroy()
    })
  })
  const origin = `http://${LOOPBACK}:${host.port}`
  return { origin, token, address: `${origin}/#token=${token}`, close: () => closed(server) }
}

async function answer(request: IncomingMessage, response: ServerResponse, host: Host, { context, files }: Pick<LoopbackOptions, 'context' | 'files'>): Promise<void> {
  const stranger = turnAwayStranger(request.headers, host)
  if (stranger) return turnAway(response, stranger)
  const [path = '/'] = (request.url ?? '/').split('?')
  if (!path.startsWith(CALL_PATH)) return sendFile(request, response, path, files)
  if (request.method !== 'POST') return turnAway(response, { status: 405, why: 'An operation is called by POST.' })
  const caller = turnAwayCall(request.headers, host)
  if (caller) return turnAway(response, caller)
  const body = await readBody(request)
  if (body === undefined) return turnAway(response, { status: 413, why: 'The input is larger than 25 MB.' })
  return sendAnswer(response, path.slice(CALL_PATH.length), body, context)
}

async function sendFile(request: IncomingMessage, response: ServerResponse, path: string, files: PageFiles): Promise<void> {
  if (request.method !== 'GET' && request.method !== 'HEAD') return turnAway(response, { status: 405, why: 'Files are read by GET.' })
  const file = await files(path)
  if (!file) return turnAway(response, { status: 404, why: 'There is no such file.' })
  response.writeHead(200, { ...SECURITY_HEADERS, 'content-type': file.type, 'content-length': file.bytes.length, 'cache-control': 'no-cache' })
  response.end(request.method === 'HEAD' ? undefined : file.bytes)
}

/** Lines of JSON: a line for every step, then the answer. A caller that goes away cancels its call. */
async function sendAnswer(response: ServerResponse, name: string, body: string, context: Context): Promise<void> {
  const abort = new AbortController()
  response.on('close', () => { if (!response.writableFinished) abort.abort() })
  response.writeHead(200, { ...SECURITY_HEADERS, 'content-type': 'application/x-ndjson; charset=utf-8', 'cache-control': 'no-store' })
  const write = (line: object): void => {
    if (!response.destroyed) response.write(`${JSON.stringify(line)}\n`)
  }
  const input = jsonIn(body)
  write(input.ok
    ? await callOperation(name, input.value, context, { progress: (progress) => write({ progress }), signal: abort.signal })
    : refusal(input.findings))
  response.end()
}

function turnAway(response: ServerResponse, { status, why }: TurnedAway): void {
  response.writeHead(status, { ...SECURITY_HEADERS, 'content-type': 'application/json', 'cache-control': 'no-store', connection: 'close' })
  response.end(`${JSON.stringify({ fault: { message: why } })}\n`)
}

function portOf(server: Server): number {
  const address = server.address()
  if (address === null || typeof address === 'string') throw new Error('The host listens on no port.')
  return address.port
}

function closed(server: Server): Promise<void> {
  return new Promise((resolve) => {
    server.close(() => resolve())
    server.closeAllConnections()
  })
}
