import { parseInstant, refuseUnsampled, type GaugeSnapshot } from '../gauge/index.ts'
import { staticQuantity, type Worksheet } from '../quantity/index.ts'
import { accepted, allOf, eachOnce, refused, type Finding, type Outcome } from '../refusal/index.ts'
import { exceptionFrom, type WorksheetLine } from '../worksheet/index.ts'
import { lineQuantity, type LineQuantity } from './line-fill.ts'
import { acrossCustodyPoint, lineChange, tankChange, valuesOf } from './moved.ts'
import type { TransferInput, TransferResult } from './transfer.ts'

interface Read { readonly opening: Worksheet; readonly closing: Worksheet; readonly line: { readonly opening: LineQuantity; readonly closing: LineQuantity } | null }

/**
 * Opening and closing gauge of one tank to the quantity moved, in decimals.
 *   change = closing − opening;  receipt: moved = change of tank + change of line;  delivery: moved = −(…)
 * Everything that is wrong with tank, product and both snapshots is refused at once, at `opening.…` and `closing.…`:
 * what {@link staticQuantity} refuses, `closing-not-after-opening`; then `moved-wrong-way` unless net standard volume
 * was moved in the direction of the transfer.
 * @param input tank, product, two snapshots, and the line fill where it changed
 * @source MPMS-12.1.1 transfer quantity
 */
export function transferQuantity(input: TransferInput): Outcome<TransferResult> {
  const { tank, product, opening, closing, lineFill } = input
  const read = allOf<{ opening: Worksheet; closing: Worksheet; order: null; openingSample: null; closingSample: null; line: Read['line'] }>({
    opening: staticQuantity(tank, product, opening, 'opening'),
    closing: staticQuantity(tank, product, closing, 'closing'),
    order: checkOrder(opening.at, closing.at),
    openingSample: refuseUnsampled(opening, 'opening'),
    closingSample: refuseUnsampled(closing, 'closing'),
    line: lineFill === undefined ? accepted(null) : allOf<{ opening: LineQuantity; closing: LineQuantity }>({
      opening: lineQuantity(lineFill.opening, 'opening', product, opening, tank),
      closing: lineQuantity(lineFill.closing, 'closing', product, closing, tank),
    }),
  })
  return read.ok ? subtract(input, read.value) : refused(...eachOnce(read.findings))
}

/** Closing later than opening; an instant that cannot be read is refused with its snapshot. */
function checkOrder(opening: string, closing: string): Outcome<null> {
  const first = parseInstant(opening, 'opening.at')
  const second = parseInstant(closing, 'closing.at')
  if (!first.ok || !second.ok || second.value.order > first.value.order) return accepted(null)
  return refused({ code: 'closing-not-after-opening', path: 'closing.at', value: closing, limit: opening, clause: 'MPMS-12.1.1 transfer quantity' })
}

function subtract({ kind, product, opening: first, closing: last }: TransferInput, { opening, closing, line }: Read): Outcome<TransferResult> {
  const tank = tankChange(valuesOf(opening.quantity), valuesOf(closing.quantity), product)
  const inLine = line === null ? null : lineChange(line.opening.values, line.closing.values, product)
  const across = acrossCustodyPoint(kind, tank.values, inLine?.values ?? null, product)
  const nsv = across.values.nsv
  if (!nsv.isPositive() || nsv.isZero()) return refused(wrongWay(kind, across.moved.nsv))
  const lineLines: readonly WorksheetLine[] = line === null || inLine === null ? [] : [...line.opening.lines, ...line.closing.lines, ...inLine.lines]
  return accepted({
    kind, opening, closing,
    lines: [...tank.lines, ...lineLines, ...across.lines],
    tankChange: tank.moved, moved: across.moved,
    exceptions: [...opening.exceptions, ...closing.exceptions, ...sharedSamples(first, last).map(exceptionFrom)],
  })
}

/** A sample that stands for both gauges, though the liquid moved between them. */
function sharedSamples({ samples: before = [] }: GaugeSnapshot, { samples: after = [] }: GaugeSnapshot): readonly Finding[] {
  return after.flatMap(({ number, at }, i): Finding[] => before.some((other) => other.number === number) ? [
    { code: 'sample-shared', path: `closing.samples.${i}.number`, value: number, limit: `it was drawn once, at ${at}`, clause: 'MPMS-8.1 sampling of tanks' },
  ] : [])
}

function wrongWay(kind: TransferInput['kind'], { value, unit }: { readonly value: string; readonly unit: string }): Finding {
  const limit = kind === 'receipt' ? 'receipt brings more than 0 into the tank' : 'delivery takes more than 0 out of the tank'
  return { code: 'moved-wrong-way', path: 'closing.level', value: `${value} ${unit}`, limit, clause: 'MPMS-12.1.1 transfer quantity' }
}
