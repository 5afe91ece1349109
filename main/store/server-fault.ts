import { LedgerFault } from './fault.ts'

/** What became of the connection: lost, or there but something else is wrong. */
export type ServerTrouble = 'away' | 'damaged' | 'other'

/** What is wrong with the server of a ledger, in words for whoever must mend it. */
export class LedgerServerFault extends LedgerFault {
  readonly trouble: ServerTrouble

  constructor(place: string, trouble: ServerTrouble, message: string, cause?: unknown) {
    super(place, message, cause)
    this.trouble = trouble
  }
}

type Remedy = readonly [trouble: ServerTrouble, words: (place: string, said: string) => string]

const AWAY: Remedy = ['away', (place, said) => `The database server of the ledger ${place} does not answer (${said}). Check that it runs and that this machine reaches it. Dipledger goes on by itself when it answers again.`]
const DAMAGED: Remedy = ['damaged', (place, said) => `The database of the ledger ${place} reports damage (${said}). Do not go on with it: have its administrator look at it, and restore the last backup into a new place.`]
const TAKEN: Remedy = ['other', (place) => `The ledger ${place} is being written by another desk, which did not finish in time. Try again.`]
const REFUSED: Remedy = ['other', (place, said) => `The database server of the ledger ${place} lets this desk not in (${said}). Check user and password in the ledger's address or in PGPASSWORD, and the server's pg_hba.conf.`]

/** Codes of PostgreSQL, whole or by class. See https://www.postgresql.org/docs/15/errcodes-appendix.html */
const BY_CODE: ReadonlyMap<string, Remedy> = new Map<string, Remedy>([
  ['08', AWAY], ['57P01', AWAY], ['57P02', AWAY], ['57P03', AWAY], ['57P05', AWAY], ['25P03', AWAY],
  ['28', REFUSED],
  ['3D000', ['other', (place) => `There is no database for the ledger ${place}. Have it made by the server's administrator (create database … owner …), or mend the address.`]],
  ['42501', ['other', (place, said) => `The ledger ${place} cannot be used: ${said}. The role must own the database's tables; ask the server's administrator.`]],
  ['53100', ['other', (place) => `The disk of the database server of the ledger ${place} is full. Have space freed and try again; nothing was half posted.`]],
  ['53', ['other', (place, said) => `The database server of the ledger ${place} has nothing left to serve this desk with (${said}). Try again; if it stays so, ask its administrator.`]],
  ['25006', ['other', (place) => `The ledger ${place} cannot be written: the server is a standby or read-only. Give the address of the primary server.`]],
  ['55P03', TAKEN],
  ['57014', ['other', (place) => `The database server of the ledger ${place} took too long and was stopped. Try again; if it stays so, ask its administrator.`]],
  ['58', DAMAGED], ['XX001', DAMAGED], ['XX002', DAMAGED], ['22021', DAMAGED], ['25P02', DAMAGED],
])

const SYSTEM_AWAY = ['ECONNREFUSED', 'ECONNRESET', 'ECONNABORTED', 'EPIPE', 'ENOTFOUND', 'EAI_AGAIN', 'ETIMEDOUT', 'EHOSTUNREACH', 'ENETUNREACH', 'EHOSTDOWN', 'ENETDOWN']
const DRIVER_AWAY = /^(Connection terminated|timeout exceeded when trying to connect|Query read timeout|Client has encountered a connection error|Client was closed|The server closed the connection)/
const TLS = /^(ERR_TLS|DEPTH_ZERO|SELF_SIGNED|UNABLE_TO_|CERT_|ERR_SSL)/

/** An error of the driver that concerns the server, put into words; any other error as it is. */
export function inServerWords(place: string, error: unknown): unknown {
  if (!(error instanceof Error) || error instanceof LedgerFault) return error
  const found = remedyFor(error)
  return found === undefined ? error : new LedgerServerFault(place, found[0], found[1](place, said(error)), error)
}

/** Whether the connection to the server was lost, so that nobody can say from here what it did last. */
export function isAway(error: unknown): boolean {
  return error instanceof LedgerServerFault && error.trouble === 'away'
}

/** The code that the server or the system gave an error. */
export function codeOf(error: unknown): string {
  return error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : ''
}

function remedyFor(error: Error): Remedy | undefined {
  const code = codeOf(error)
  if (SYSTEM_AWAY.includes(code) || DRIVER_AWAY.test(error.message)) return AWAY
  if (TLS.test(code) || error.message.startsWith('The server does not support SSL')) {
    return ['other', (place, what) => `No encrypted connection to the server of the ledger ${place} comes about (${what}). Check sslmode and sslrootcert in the ledger's address.`]
  }
  if (/password must be a string|no password/i.test(error.message)) return REFUSED
  return code.length === 5 ? BY_CODE.get(code) ?? BY_CODE.get(code.slice(0, 2)) : undefined
}

/** What the driver says; several addresses of one name that all fail come as one error without words. */
function said(error: Error): string {
  const one: unknown = error instanceof AggregateError ? error.errors[0] : error
  const words = one instanceof Error ? one.message : String(one)
  return words.replace(/\s+/g, ' ').trim().slice(0, 200)
}
