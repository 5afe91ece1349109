import type { IncomingHttpHeaders } from 'node:http'
import { sameToken } from './token.ts'

/** Why a request is turned away, before anything of it is read. */
export interface TurnedAway { readonly status: 400 | 403 | 404 | 405 | 413 | 415; readonly why: string }

/** What the guard knows of this host. */
export interface Host { readonly port: number; readonly token: string }

/** The two names under which this host is reached; a page that renamed itself to our address has another one. */
function ownNames(port: number): readonly string[] {
  return [`127.0.0.1:${port}`, `localhost:${port}`]
}

/** Every request: its Host must be ours, against names that were pointed at this machine from outside. */
export function turnAwayStranger(headers: IncomingHttpHeaders, host: Host): TurnedAway | undefined {
  if (!ownNames(host.port).includes(headers.host ?? '')) return { status: 403, why: 'The Host header does not name this host.' }
  const { origin } = headers
  if (origin !== undefined && !ownNames(host.port).some((name) => origin === `http://${name}`)) return { status: 403, why: 'The request comes from another origin.' }
  const site = headers['sec-fetch-site']
  if (site !== undefined && site !== 'same-origin' && site !== 'none') return { status: 403, why: 'The request comes from another site.' }
  return undefined
}

/** A call of an operation: token and content type. */
export function turnAwayCall(headers: IncomingHttpHeaders, host: Host): TurnedAway | undefined {
  const token = headers['x-dipledger-token']
  if (!sameToken(typeof token === 'string' ? token : undefined, host.token)) return { status: 403, why: 'The token is missing or is not the one of this start. Open the address that Dipledger printed.' }
  const [type = ''] = (headers['content-type'] ?? '').split(';')
  if (type.trim().toLowerCase() !== 'application/json') return { status: 415, why: 'A call carries application/json.' }
  return undefined
}
