import { readFileSync, statSync } from 'node:fs'
import type { ConnectionOptions } from 'node:tls'
import { LedgerFault } from './fault.ts'

/** Where a ledger is kept on a PostgreSQL server. */
export interface ServerPlace {
  readonly host: string
  readonly port: number
  readonly database: string
  /** The system's, or PGUSER's, when absent. */
  readonly user: string | undefined
  /** PGPASSWORD's when absent. Goes into no message. */
  readonly password: string | undefined
  readonly tls: ConnectionOptions | false
  /** host:port/database, to be shown. */
  readonly shown: string
}

const USUAL_PORT = 5432
const FORM = 'Write postgresql://USER@HOST:PORT/DATABASE; the password may stand behind the user, after a colon, with / and @ in it as %2F and %40, or in PGPASSWORD.'
const SETTINGS = ['sslmode', 'sslrootcert']
const MODES = 'disable (no encryption), require (encrypted), verify-ca (encrypted, certificate checked) or verify-full (and the name in it)'

/** Whether a place is meant as the address of a server, well written or not; else it is a path. */
export function isServerAddress(place: string): boolean {
  return /^postgres(ql)?:/i.test(place)
}

/**
 * Reads the address of a ledger on a server.
 * @throws LedgerFault that says how to write it, without what was written: it may hold a password
 */
export function serverPlace(address: string): ServerPlace {
  const { settings, ...place } = partsOf(address)
  const strange = [...settings.keys()].find((key) => !SETTINGS.includes(key))
  if (strange !== undefined) throw new LedgerFault(place.shown, `“${strange}” in the address of the ledger ${place.shown} is no setting that Dipledger knows. It knows ${SETTINGS.join(' and ')}.`)
  return { ...place, tls: tlsOf(settings, place.shown) }
}

/** A place as it may be shown: a path as it is, the address of a server without user and password. */
export function shownPlace(place: string): string {
  return isServerAddress(place) ? partsOf(place).shown : place
}

/** What stands in an address. A password with a / or @ in it moves into other parts, which are not shown then either. */
function partsOf(address: string): Omit<ServerPlace, 'tls'> & { readonly settings: URLSearchParams } {
  if (!URL.canParse(address)) throw new LedgerFault('the server', `The address of the ledger's server cannot be read. ${FORM}`)
  const url = new URL(address)
  const [host, database, user, password] = [url.hostname, url.pathname.slice(1), url.username, url.password].map(decoded)
  const port = url.port === '' ? USUAL_PORT : Number(url.port)
  if (!host || !database || /[/@]/.test(database)) throw new LedgerFault('the server', `The address of the ledger's server names no host or no database. ${FORM}`)
  return { host: host.replace(/^\[|\]$/g, ''), port, database, user: user || undefined, password: password || undefined, settings: url.searchParams, shown: `${url.hostname}:${port}/${database}` }
}

function decoded(part: string): string {
  try {
    return decodeURIComponent(part)
  } catch {
    throw new LedgerFault('the server', `A % in the address of the ledger's server begins no letter. ${FORM}`)
  }
}

/** @see https://www.postgresql.org/docs/15/libpq-ssl.html table 34.1 */
function tlsOf(settings: URLSearchParams, shown: string): ConnectionOptions | false {
  const file = settings.get('sslrootcert')
  const trusted = file === null ? {} : { ca: certificateIn(file, shown) }
  switch (settings.get('sslmode')) {
    case null: case 'disable': return false
    case 'require': return { ...trusted, rejectUnauthorized: file !== null, checkServerIdentity: () => undefined }
    case 'verify-ca': return { ...trusted, checkServerIdentity: () => undefined }
    case 'verify-full': return trusted
    default: throw new LedgerFault(shown, `sslmode in the address of the ledger ${shown} must be ${MODES}.`)
  }
}

/** No list of authorities is longer than this; and what is no file, as a pipe or a device, may never end. */
const LONGEST_CERTIFICATE = 4_000_000

function certificateIn(path: string, shown: string): string {
  try {
    const stands = statSync(path)
    if (!stands.isFile() || stands.size > LONGEST_CERTIFICATE) throw new Error('it is no file of certificates')
    return readFileSync(path, 'utf8')
  } catch (error) {
    throw new LedgerFault(shown, `The certificate ${path}, named by sslrootcert in the address of the ledger ${shown}, cannot be read.`, error)
  }
}
