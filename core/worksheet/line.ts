import { z } from 'zod'
import { wording, type Finding } from '../refusal/index.ts'
import type { Rounded } from '../rounding/index.ts'
import type { Citation } from '../sources.ts'
import { Decimal } from '../units/index.ts'

/**
 * One line of a worksheet: what is printed is what was computed. A number that is not on a worksheet may not stand
 * on a ticket.
 */
export const worksheetLineSchema = z.strictObject({
  /** Standard symbol, unique in its worksheet: `GSV`. */
  symbol: z.string(),
  /** The symbol spelled out: `Gross standard volume`. */
  name: z.string(),
  /** Rounded value as decimal text. */
  value: z.string(),
  /** Unit word; empty for a factor. */
  unit: z.string(),
  /** The value before rounding, all digits. */
  unrounded: z.string(),
  /** Rounding rule in words; `as written` for an input, `exact` where nothing was rounded. */
  rounding: z.string(),
  /** Formula in the standard's symbols: `GOV × CTPL`; empty for an input. */
  formula: z.string(),
  /** Citation: key of core/sources.ts and clause. */
  clause: z.string(),
  /** Symbols of the lines this one was computed from. */
  from: z.array(z.string()),
  notes: z.array(z.string()),
})
export type WorksheetLine = Readonly<z.infer<typeof worksheetLineSchema>>

export const quantitySchema = z.strictObject({ value: z.string(), unit: z.string() })
/** A booked quantity: decimal text and unit. */
export type Quantity = Readonly<z.infer<typeof quantitySchema>>

/** Allowed, but must be printed on the ticket. Codes and wording are those of findings. */
export const exceptionSchema = z.strictObject({
  code: z.string(), path: z.string(), value: z.string(), limit: z.string(), clause: z.string(), message: z.string(),
})
export type Exception = Readonly<z.infer<typeof exceptionSchema>>


/** What a line is made of; the builders below fill the rest. */
interface LineWords { readonly symbol: string; readonly name: string; readonly unit: string; readonly clause: Citation; readonly notes?: readonly string[] }

/** A line for a value as it was written. */
export function inputLine(words: LineWords & { readonly value: string }): WorksheetLine {
  return { symbol: words.symbol, name: words.name, value: words.value, unit: words.unit, unrounded: words.value, rounding: 'as written', formula: '', clause: words.clause, from: [], notes: [...(words.notes ?? [])] }
}

/** A line for a computed value, rounded once by {@link discriminate}. */
export function roundedLine(words: Omit<LineWords, 'clause'> & { readonly clause?: Citation; readonly formula: string; readonly from: readonly string[]; readonly rounded: Rounded }): WorksheetLine {
  const { rounded } = words
  return { symbol: words.symbol, name: words.name, value: rounded.text, unit: words.unit, unrounded: rounded.unrounded, rounding: rounded.rule, formula: words.formula, clause: words.clause ?? rounded.clause, from: [...words.from], notes: [...(words.notes ?? [])] }
}

/** A line for a value that is exact, or that the standard does not round. */
export function exactLine(words: LineWords & { readonly formula: string; readonly from: readonly string[]; readonly value: Decimal | number }): WorksheetLine {
  const text = new Decimal(words.value).toFixed()
  return { symbol: words.symbol, name: words.name, value: text, unit: words.unit, unrounded: text, rounding: 'not rounded', formula: words.formula, clause: words.clause, from: [...words.from], notes: [...(words.notes ?? [])] }
}

/** A line with the value that it was rounded from. */
export function unroundedLine(line: WorksheetLine): WorksheetLine {
  return line.value === line.unrounded ? line : { ...line, value: line.unrounded, rounding: 'not rounded' }
}

/** A finding that was allowed, as it is printed. */
export function exceptionFrom(finding: Finding): Exception {
  return { ...finding, message: wording(finding) }
}
