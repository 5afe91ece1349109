import { refuseUnverified } from '../../core/gauge/index.ts'
import type { Worksheet } from '../../core/quantity/index.ts'
import { wording, type Finding, type Outcome } from '../../core/refusal/index.ts'
import { transferQuantity, type TransferInput, type TransferResult } from '../../core/transfer/index.ts'
import type { TerminalNow } from '../app/TerminalContext.tsx'
import { computeGauge, type ComputedGauge } from '../gauge/compute-gauge.ts'
import { isOnlyEmpty, placeOnSheet, type Placed, type PlacedFinding } from '../gauge/placed-findings.ts'
import { usualUnits, withUsualUnit, type UsualUnits } from '../gauge/usual-units.ts'
import type { InputOf } from '../../main/operations/contracts/index.ts'
import { localTime } from '../parts/local-time.ts'
import { words } from '../words/en.ts'
import { GAUGES, type GaugeName, type TransferForm } from './transfer-form.ts'

export type TicketDraft = InputOf<'post-ticket'>['ticket']

/** Everything the window knows of a transfer half written. */
export interface ComputedTransfer extends Placed {
  readonly opening: Worksheet | undefined
  readonly closing: Worksheet | undefined
  readonly transfer: TransferResult | undefined
  /** What can be signed; undefined as long as something is missing or wrong. */
  readonly ticket: TicketDraft | undefined
}

const NOTHING: Omit<ComputedTransfer, 'findings' | 'missing'> = { opening: undefined, closing: undefined, transfer: undefined, ticket: undefined }

/** Computes as far as the sheet goes, in the core itself: each gauge alone, then what was moved. */
export function computeTransfer(form: TransferForm, now: Pick<TerminalNow, 'tanks' | 'products' | 'terminal' | 'verifications'>): ComputedTransfer {
  const tank = now.tanks.find(({ code }) => code === form.tank)
  const product = now.products.find(({ code }) => code === form.product)
  const unchosen = (['tank', 'product', 'from', 'to'] as const).filter((field) => form[field] === '')
  if (!tank || !product) return { ...NOTHING, findings: [], missing: unchosen }
  const units = usualUnits(tank, product)
  const zone = now.terminal?.zone ?? 'UTC'
  const gaugeOf = (name: GaugeName): ComputedGauge => computeGauge(name, form[name], { tank, product, zone })
  const [opening, closing] = [gaugeOf('opening'), gaugeOf('closing')]
  const lineFill = form.lineFill.used ? { lineFill: lineFillOf(form, units) } : {}
  const input: TransferInput = { kind: form.kind, tank, product, opening: opening.read.snapshot, closing: closing.read.snapshot, ...lineFill }
  const whole = opening.read.time.ok && closing.read.time.ok ? transferQuantity(input) : undefined
  const unverified = GAUGES.flatMap((name) => refuseUnverified(input[name], now.verifications, name))
  const ofTransfer = placeOnTransfer([...(whole && !whole.ok ? whole.findings : []), ...unverified], zone)
  const findings = eachOnce([...opening.placed.findings, ...closing.placed.findings, ...ofTransfer.findings])
  const missing = [...new Set([...unchosen, ...opening.placed.missing, ...closing.placed.missing, ...ofTransfer.missing])]
  const ticket: TicketDraft = {
    kind: form.kind, tank: form.tank, product: form.product, from: form.from, to: form.to, opening: input.opening, closing: input.closing, ...lineFill,
    ...(form.reference.trim() !== '' && { reference: form.reference }), ...(form.remarks.trim() !== '' && { remarks: form.remarks }), ...(form.replaces !== '' && { replaces: form.replaces }),
  }
  return {
    opening: valueIn(opening.outcome), closing: valueIn(closing.outcome), transfer: whole && valueIn(whole), findings, missing,
    ticket: whole?.ok && findings.length === 0 && missing.length === 0 ? ticket : undefined,
  }
}

/** The transfer says of its gauges what each of them said alone. */
function eachOnce(findings: readonly PlacedFinding[]): readonly PlacedFinding[] {
  return findings.filter((finding, at) => findings.findIndex(({ field, message }) => field === finding.field && message === finding.message) === at)
}

function valueIn<T>(outcome: Outcome<T>): T | undefined {
  return outcome.ok ? outcome.value : undefined
}

function lineFillOf(form: TransferForm, units: UsualUnits): NonNullable<TransferInput['lineFill']> {
  const contents = (name: GaugeName): { volume: string; temperature: string } => ({
    volume: withUsualUnit(form.lineFill[name].volume, 'volume', units), temperature: withUsualUnit(form.lineFill[name].temperature, 'temperature', units),
  })
  return { opening: contents('opening'), closing: contents('closing'), ...(form.lineFill.line.trim() !== '' && { line: form.lineFill.line.trim() }) }
}

/** Findings of the transfer as a whole, or of one of its gauges, on the fields they belong to. */
export function placeOnTransfer(found: readonly Finding[], zone: string): Placed {
  const findings: PlacedFinding[] = []
  const missing: string[] = []
  const fine = { ok: true, instant: '' } as const
  for (const finding of found.map((each) => inLocalTime(withoutOperationPath(each), zone))) {
    const gauge = GAUGES.find((name) => finding.path === name || finding.path.startsWith(`${name}.`))
    if (gauge) {
      const placed = placeOnSheet(gauge, [finding], 'given', fine)
      findings.push(...placed.findings)
      missing.push(...placed.missing)
    } else if (isOnlyEmpty(finding)) missing.push(finding.path)
    else findings.push({ field: finding.path, message: wording({ ...finding, path: nameOfField(finding.path) }), clause: finding.clause })
  }
  return { findings, missing }
}

/** Paths as `post-ticket` gives them begin with the name of its input. */
function withoutOperationPath<F extends { readonly path: string }>(finding: F): F {
  return { ...finding, path: finding.path.replace(/^(ticket|transfer|input)\./, '') }
}

/** A finding about times says them as the sheet does: in the terminal's zone. */
function inLocalTime(finding: Finding, zone: string): Finding {
  const said = (text: string): string => text.replace(/\d{4}-\d{2}-\d{2}T[\d:.]+Z/g, (instant) => localTime(instant, zone))
  return { ...finding, value: said(finding.value), limit: said(finding.limit) }
}

/** A header or line-fill field for people; a path that is no field stays as it is. */
export function nameOfField(path: string): string {
  const names: Readonly<Record<string, string>> = words.transfer.fields
  return names[path] ?? path
}
