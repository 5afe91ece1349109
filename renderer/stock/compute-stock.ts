import type { Product, Worksheet } from '../../core/quantity/index.ts'
import { wording, type Finding } from '../../core/refusal/index.ts'
import type { Tank } from '../../core/tank/index.ts'
import { stockMovement, type FilledLine, type GaugedTank, type LineStanding, type StockInput, type StockResult } from '../../core/transfer/index.ts'
import type { InputOf } from '../../main/operations/contracts/index.ts'
import type { TerminalNow } from '../app/TerminalContext.tsx'
import { computeGauge, type ComputedGauge } from '../gauge/compute-gauge.ts'
import { isOnlyEmpty, placeOnSheet, type Placed, type PlacedFinding } from '../gauge/placed-findings.ts'
import { usualUnits, withUsualUnit } from '../gauge/usual-units.ts'
import { readLocalTime } from '../parts/local-time.ts'
import { words } from '../words/en.ts'
import { sidesOf, type GaugeSide, type StockForm } from './stock-form.ts'

export type StockDraft = InputOf<'post-stock-movement'>['movement']
type Now = Pick<TerminalNow, 'tanks' | 'products' | 'terminal'>

/** The gauges of one tank as far as they go. */
export interface SheetOfTank { readonly code: string; readonly gauges: { readonly [S in GaugeSide]?: Worksheet | undefined } }

/** Everything the window knows of a movement half written. */
export interface ComputedStock extends Placed {
  readonly sheets: readonly SheetOfTank[]
  readonly result: StockResult | undefined
  /** What can be posted; undefined as long as something is missing or wrong. */
  readonly draft: StockDraft | undefined
}

/** Start of the ids of a gauge's fields: `T-101.opening`, of the one gauge of a regrade `T-101.gauge`; a tank not chosen yet goes by its place. */
export function columnOf(form: StockForm, at: number, side: GaugeSide): string {
  return `${form.tanks[at]?.tank || `tank-${at + 1}`}.${form.kind === 'regrade' ? 'gauge' : side}`
}

interface Found { readonly tank: Tank; readonly product: Product; readonly gauges: { readonly [S in GaugeSide]: ComputedGauge | undefined } }

/** Computes as far as the sheet goes, in the core itself: each gauge alone, then the movement. */
export function computeStock(form: StockForm, now: Now): ComputedStock {
  const zone = now.terminal?.zone ?? 'UTC'
  const tanks = form.tanks.map((one, at) => gaugesOf(form, at, one, now, zone))
  const product = now.products.find(({ code }) => code === form.toProduct)
  const line = lineOf(form, now, zone)
  const missing = [
    ...tanks.flatMap((found, at) => (found === undefined ? [`tank-${at}`] : [])),
    ...(form.kind === 'regrade' && product === undefined ? ['toProduct'] : []),
    ...line.missing, ...(form.reason.trim() === '' ? ['reason'] : []),
  ]
  const gauges = tanks.flatMap((found) => (found === undefined ? [] : [found.gauges.opening, found.gauges.closing].filter((one) => one !== undefined)))
  const own = { findings: [...gauges.flatMap(({ placed }) => placed.findings), ...line.findings], missing: gauges.flatMap(({ placed }) => placed.missing) }
  const whole = tanks.every((found) => found !== undefined) && gauges.every(({ read }) => read.time.ok) ? inputOf(form, tanks, line.line, product) : undefined
  const outcome = whole && stockMovement(whole)
  const placed = place(outcome && !outcome.ok ? outcome.findings : [], form)
  const findings = eachOnce([...own.findings, ...placed.findings])
  const all = [...new Set([...missing, ...own.missing, ...placed.missing])]
  return {
    sheets: tanks.flatMap((found) => (found === undefined ? [] : [{ code: found.tank.code, gauges: { opening: valueIn(found.gauges.opening), closing: valueIn(found.gauges.closing) } }])),
    result: outcome?.ok ? outcome.value : undefined, findings, missing: all,
    draft: whole && outcome?.ok && findings.length === 0 && all.length === 0 ? draftOf(whole) : undefined,
  }
}

function gaugesOf(form: StockForm, at: number, one: StockForm['tanks'][number], now: Now, zone: string): Found | undefined {
  const tank = now.tanks.find(({ code }) => code === one.tank)
  const product = now.products.find(({ code }) => code === one.product)
  if (!tank || !product) return undefined
  const gauge = (side: GaugeSide): ComputedGauge | undefined => (sidesOf(form.kind).includes(side) ? computeGauge(columnOf(form, at, side), one[side], { tank, product, zone }) : undefined)
  return { tank, product, gauges: { opening: gauge('opening'), closing: gauge('closing') } }
}

function valueIn(gauge: ComputedGauge | undefined): Worksheet | undefined {
  return gauge?.outcome.ok ? gauge.outcome.value : undefined
}

function gauged(found: Found | undefined): GaugedTank | undefined {
  const { opening, closing } = found?.gauges ?? {}
  return found && opening && closing && { tank: found.tank, product: found.product, opening: opening.read.snapshot, closing: closing.read.snapshot }
}

function inputOf(form: StockForm, tanks: readonly (Found | undefined)[], line: FilledLine | undefined, product: Product | undefined): StockInput | undefined {
  const all = tanks.map(gauged)
  const [from] = all
  const to = all.at(-1)
  const withLine = line === undefined ? {} : { line }
  if (form.line.used && line === undefined) return undefined
  switch (form.kind) {
    case 'tank-to-tank': return from && to && { kind: form.kind, from, to, ...withLine }
    case 'blend': return to && { kind: form.kind, from: all.slice(0, -1).flatMap((one) => one ?? []), to, ...withLine }
    case 'water-draw-off': {
      const oil = from && withUsualUnit(form.netOil, 'volume', usualUnits(from.tank, from.product))
      return from && { kind: form.kind, tank: from, ...(oil !== undefined && oil.trim() !== '' && { netOil: oil }) }
    }
    case 'regrade': return regradeOf(form, tanks[0], product)
    case 'line-fill': return line && { kind: form.kind, line }
  }
}

function regradeOf(form: StockForm, found: Found | undefined, product: Product | undefined): StockInput | undefined {
  const gauge = found?.gauges.opening?.read.snapshot
  if (!found || !gauge || !product) return undefined
  const density = withUsualUnit(form.toDensity, 'density', usualUnits(found.tank, product)).trim()
  const taken = { ...gauge, product: product.code, ...(density !== '' && { density: { value: density, instrument: 'base' as const } }) }
  return { kind: 'regrade', from: { tank: found.tank, product: found.product, gauge }, to: { tank: { ...found.tank, product: product.code }, product, gauge: taken } }
}

/** What `post-stock-movement` takes: gauges name their tanks, the ledger has them. */
function draftOf(input: StockInput): StockDraft {
  const pair = ({ opening, closing }: GaugedTank): { readonly opening: GaugedTank['opening']; readonly closing: GaugedTank['closing'] } => ({ opening, closing })
  const line = ({ code, product, opening, closing }: FilledLine): Extract<StockDraft, { kind: 'line-fill' }>['line'] => ({ code, product: product.code, opening, closing })
  switch (input.kind) {
    case 'tank-to-tank': return { kind: input.kind, from: pair(input.from), to: pair(input.to), ...(input.line && { line: line(input.line) }) }
    case 'blend': return { kind: input.kind, from: input.from.map(pair), to: pair(input.to), ...(input.line && { line: line(input.line) }) }
    case 'regrade': {
      const { density } = input.to.gauge
      return { kind: input.kind, gauge: input.from.gauge, to: { product: input.to.product.code, ...(density !== undefined && density !== input.from.gauge.density && { density }) } }
    }
    case 'water-draw-off': return { kind: input.kind, tank: pair(input.tank), ...(input.netOil !== undefined && { netOil: input.netOil }) }
    case 'line-fill': return { kind: input.kind, line: line(input.line) }
  }
}

function lineOf({ line }: StockForm, now: Now, zone: string): Placed & { readonly line: FilledLine | undefined } {
  if (!line.used) return { line: undefined, findings: [], missing: [] }
  const product = now.products.find(({ code }) => code === line.product)
  const needed = line.by === 'net' ? ['at', 'net'] as const : ['at', 'volume', 'temperature', 'density', 'sedimentAndWater'] as const
  const missing = [
    ...(line.code.trim() === '' ? ['line.code'] : []), ...(product === undefined ? ['line.product'] : []),
    ...(['opening', 'closing'] as const).flatMap((side) => needed.filter((field) => line[side][field].trim() === '').map((field) => `line.${side}.${field}`)),
  ]
  const times = (['opening', 'closing'] as const).flatMap((side): readonly PlacedFinding[] => {
    const time = readLocalTime(line[side].at, zone)
    return time.ok || line[side].at.trim() === '' ? [] : [{ field: `line.${side}.at`, message: words.gauge.time[time.why](words.stock.fields[`line.${side}.at`]), clause: 'RFC-3339' }]
  })
  if (missing.length > 0 || times.length > 0 || product === undefined) return { line: undefined, findings: times, missing }
  const units = usualUnits(undefined, product)
  const contents = (side: GaugeSide): LineStanding => {
    const time = readLocalTime(line[side].at, zone)
    const at = time.ok ? time.instant : line[side].at
    if (line.by === 'net') return { at, net: withUsualUnit(line[side].net, 'volume', units) }
    return {
      at, volume: withUsualUnit(line[side].volume, 'volume', units), temperature: withUsualUnit(line[side].temperature, 'temperature', units),
      density: { value: withUsualUnit(line[side].density, 'density', units), instrument: 'base' }, sedimentAndWater: withUsualUnit(line[side].sedimentAndWater, 'share', units),
    }
  }
  return { line: { code: line.code.trim(), product, opening: contents('opening'), closing: contents('closing') }, findings: [], missing: [] }
}

/** Where a path of the movement leads on the sheet: `from.1.closing.level` → column `T-102.closing`, path `level`. */
export function place(found: readonly Finding[], form: StockForm): Placed {
  const findings: PlacedFinding[] = []
  const missing: string[] = []
  for (const finding of found) {
    const gauge = gaugeOfPath(finding.path, form)
    if (gauge) {
      const placed = placeOnSheet(gauge.column, [{ ...finding, path: `${gauge.column}.${gauge.rest}` }], 'given', { ok: true, instant: '' })
      findings.push(...placed.findings)
      missing.push(...placed.missing)
      continue
    }
    const field = fieldOfPath(finding.path, form)
    if (isOnlyEmpty(finding)) missing.push(field)
    else findings.push({ field, message: wording({ ...finding, path: nameOfStockField(field, form) }), clause: finding.clause })
  }
  return { findings, missing }
}

export function gaugeOfPath(path: string, form: StockForm): { readonly column: string; readonly rest: string } | undefined {
  const found = /^(?:movement\.)?(from|to|tank)?\.?(\d+)?\.?(opening|closing|gauge)(?:\.(.+))?$/.exec(path)
  if (!found || path.includes('line.')) return undefined
  const at = found[1] === 'to' && form.kind !== 'regrade' ? form.tanks.length - 1 : Number(found[2] ?? 0)
  return { column: columnOf(form, at, found[3] === 'closing' ? 'closing' : 'opening'), rest: found[4] ?? 'at' }
}

export function fieldOfPath(path: string, form: StockForm): string {
  const plain = path.replace(/^movement\./, '')
  if (/^(from|to|tank)\b/.test(plain) && form.kind !== 'regrade') return `tank-${plain.startsWith('to') ? form.tanks.length - 1 : Number(/^from\.(\d+)/.exec(plain)?.[1] ?? 0)}`
  if (plain.startsWith('to.')) return 'toProduct'
  const line = /^line\.(opening|closing)\.(at|net|volume|temperature|density|sedimentAndWater)/.exec(plain)
  return line ? `line.${line[1]}.${line[2]}` : plain.startsWith('line.product') ? 'line.product' : plain
}

/** A field of the movement by its id. */
export function nameOfStockField(id: string, form: StockForm): string {
  const tank = /^tank-(\d+)$/.exec(id)
  if (tank) return words.stock.tankRole(form.kind, Number(tank[1]), form.tanks.length)
  const names: Readonly<Record<string, string>> = words.stock.fields
  return names[id] ?? id
}

/** The movement says of its gauges what each of them said alone. */
function eachOnce(findings: readonly PlacedFinding[]): readonly PlacedFinding[] {
  return findings.filter((finding, at) => findings.findIndex(({ field, message }) => field === finding.field && message === finding.message) === at)
}
