import { z } from 'zod'
import { gaugeSnapshotSchema, type GaugeSnapshot } from '../../core/gauge/index.ts'
import { staticQuantity } from '../../core/quantity/index.ts'
import { accepted, andThen, refused, type Finding, type Outcome } from '../../core/refusal/index.ts'
import { SIGNER_ROLES } from '../../core/ticket/index.ts'
import { transferQuantity } from '../../core/transfer/index.ts'
import { ticketDraftSchema } from '../operations/contracts/tickets.ts'
import { readSheet, shaped, type Column, type SheetLine } from './csv-sheet.ts'
import { gaugeColumns } from './gauge-columns.ts'
import { instantOfLocal } from './local-time.ts'
import type { TerminalFolder } from './terminal-folder.ts'

type Files = Readonly<Record<string, string>>

const movementSchema = z.strictObject({
  ticket: ticketDraftSchema.omit({ opening: true, closing: true, replaces: true }).extend({ reference: z.string().min(1).max(80) }),
  opening: gaugeSnapshotSchema.omit({ tank: true, product: true }),
  closing: gaugeSnapshotSchema.omit({ tank: true, product: true }),
  signers: z.strictObject({ first: z.string(), second: z.string(), role: z.enum(SIGNER_ROLES) }),
  /** Reference of the voided movement that this one replaces. */
  replaces: z.string().optional(),
  voided: z.strictObject({ at: z.string(), reason: z.string().min(1).max(500), by: z.string().min(1).max(80) }).optional(),
})

/** A movement between two gauges, who signs it, and what became of it. */
export type MonthMovement = Readonly<{
  line: string
  ticket: Omit<z.infer<typeof ticketDraftSchema>, 'reference' | 'replaces'> & { readonly reference: string }
  signers: z.infer<typeof movementSchema>['signers']
  replaces: string | undefined
  voided: z.infer<typeof movementSchema>['voided']
}>
/** A month of a terminal, as its folder says it. */
export interface MonthFolder {
  readonly inventories: readonly { readonly line: string; readonly snapshot: GaugeSnapshot }[]
  readonly movements: readonly MonthMovement[]
}

const INVENTORIES = 'month/inventories.csv'
const MOVEMENTS = 'month/movements.csv'

/** Everything that the folder `month/` says, computed once to be sure of it; every wrong cell of both files at once. */
export function readMonthFolder(files: Files, terminal: TerminalFolder): Outcome<MonthFolder> {
  const { zone } = terminal.terminal
  const inventories = readLines(files, INVENTORIES, [{ name: 'tank', at: 'tank' }, { name: 'product', at: 'product' }, ...gaugeColumns(zone)], (line) => readInventory(line, terminal))
  const movements = readLines(files, MOVEMENTS, movementColumns(zone), (line) => readMovement(line, terminal))
  const findings = [...inventories.findings, ...movements.findings, ...replacements(movements.values), ...overlaps(movements.values)]
  return findings.length > 0 ? refused(...findings) : accepted({ inventories: inventories.values, movements: movements.values })
}

function movementColumns(zone: string): readonly Column[] {
  return [
    { name: 'reference', at: 'ticket.reference' }, { name: 'kind', at: 'ticket.kind' }, { name: 'tank', at: 'ticket.tank' }, { name: 'product', at: 'ticket.product' },
    { name: 'from', at: 'ticket.from' }, { name: 'to', at: 'ticket.to' }, ...gaugeColumns(zone, 'opening_', 'opening.'), ...gaugeColumns(zone, 'closing_', 'closing.'),
    { name: 'first_signer', at: 'signers.first' }, { name: 'second_signer', at: 'signers.second' }, { name: 'second_role', at: 'signers.role' },
    { name: 'remarks', at: 'ticket.remarks', optional: true }, { name: 'replaces', at: 'replaces', optional: true },
    { name: 'voided_at', at: 'voided.at', optional: true, read: (text, path) => instantOfLocal(text, zone, path) },
    { name: 'void_reason', at: 'voided.reason', optional: true }, { name: 'voided_by', at: 'voided.by', optional: true },
  ]
}

function readLines<T>(files: Files, file: string, columns: readonly Column[], read: (line: SheetLine) => Outcome<T>): { readonly values: readonly T[]; readonly findings: readonly Finding[] } {
  const sheet = readSheet(files, file, columns)
  const outcomes = sheet.lines.map(read)
  return { values: outcomes.flatMap((outcome) => (outcome.ok ? [outcome.value] : [])), findings: [...sheet.findings, ...outcomes.flatMap((outcome) => (outcome.ok ? [] : outcome.findings))] }
}

function readInventory(line: SheetLine, terminal: TerminalFolder): Outcome<MonthFolder['inventories'][number]> {
  return andThen(shaped(line, gaugeSnapshotSchema), (snapshot) => {
    const { tank, product, findings } = inService(terminal, snapshot)
    if (tank === undefined || product === undefined) return refused(...findings.map((finding) => line.placed(finding)))
    const computed = staticQuantity(tank, product, snapshot, 'gauge')
    if (computed.ok) return accepted({ line: line.path, snapshot })
    return refused(...computed.findings.map((finding) => line.placed({ ...finding, path: finding.path.replace(/^gauge[.]/, '') })))
  })
}

function readMovement(line: SheetLine, terminal: TerminalFolder): Outcome<MonthMovement> {
  return andThen(shaped(line, movementSchema), ({ ticket: written, opening: first, closing: last, signers, replaces, voided }) => {
    const gauged = { tank: written.tank, product: written.product }
    const ticket = { ...written, opening: { ...gauged, ...first }, closing: { ...gauged, ...last } }
    const { tank, product, findings } = inService(terminal, written, 'ticket.')
    const moved = tank === undefined || product === undefined ? refused() : transferQuantity({ kind: ticket.kind, tank, product, opening: ticket.opening, closing: ticket.closing })
    const all = [
      ...findings, ...(moved.ok ? [] : moved.findings),
      ...unknown('unknown-party', 'ticket.from', ticket.from, terminal.parties), ...unknown('unknown-party', 'ticket.to', ticket.to, terminal.parties),
      ...unknown('unknown-identity', 'signers.first', signers.first, terminal.people), ...unknown('unknown-identity', 'signers.second', signers.second, terminal.people),
    ]
    return all.length > 0 ? refused(...all.map((finding) => line.placed(finding))) : accepted({ line: line.path, ticket, signers, replaces, voided })
  })
}

function inService(terminal: TerminalFolder, named: { readonly tank: string; readonly product: string }, field = '') {
  const tank = terminal.tanks.find(({ code }) => code === named.tank)
  const product = terminal.products.find(({ code }) => code === named.product)
  const findings = [...unknown('unknown-tank', `${field}tank`, named.tank, terminal.tanks), ...unknown('unknown-product', `${field}product`, named.product, terminal.products)]
  return { tank, product, findings }
}

function unknown(code: 'unknown-tank' | 'unknown-product' | 'unknown-party' | 'unknown-identity', path: string, value: string, known: readonly ({ readonly code: string } | { readonly id: string })[]): readonly Finding[] {
  const codes = known.map((one) => ('code' in one ? one.code : one.id))
  return codes.includes(value) ? [] : [{ code, path, value, limit: codes.join(', ') || 'nothing yet', clause: 'HOUSE record' }]
}

/** A replacement names a movement of this file that was voided. */
function replacements(movements: readonly MonthMovement[]): readonly Finding[] {
  return movements.flatMap(({ line, replaces, ticket }): readonly Finding[] => {
    const twice = movements.filter((other) => other.ticket.reference === ticket.reference).length > 1
    const misplaced = replaces !== undefined && !movements.some((other) => other.ticket.reference === replaces && other.voided !== undefined)
    return [
      ...(twice ? [{ code: 'already-on-record', path: `${line}, reference`, value: ticket.reference, limit: 'a reference stands once', clause: 'HOUSE samples' } as const] : []),
      ...(misplaced ? [{ code: 'unknown-ticket', path: `${line}, replaces`, value: replaces, limit: 'give the reference of a movement that was voided', clause: 'HOUSE void-and-replace' } as const] : []),
    ]
  })
}

/** Of one tank no two movements that stand may share any time. */
function overlaps(movements: readonly MonthMovement[]): readonly Finding[] {
  const standing = movements.filter(({ voided }) => voided === undefined)
  return standing.flatMap(({ line, ticket }, i) => standing.slice(0, i)
    .filter((other) => other.ticket.tank === ticket.tank && other.ticket.opening.at < ticket.closing.at && ticket.opening.at < other.ticket.closing.at)
    .map((other): Finding => ({ code: 'gauge-overlaps-ticket', path: `${line}, opening_at`, value: `${ticket.opening.at} to ${ticket.closing.at}`, limit: `of ${other.line}`, clause: 'HOUSE tickets' })))
}
