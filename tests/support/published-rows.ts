import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import { Decimal } from '../../core/units/index.ts'

const FOLDER = join(import.meta.dirname, '../published')

const quantitySchema = z.strictObject({ name: z.string(), value: z.string(), unit: z.string() })
const expectedSchema = quantitySchema.extend({
  /** `unrounded …`: within half a unit of the last printed digit; `rounded …`: the same text; `exact …`: the same number; `refusal …`: these codes. */
  rounding: z.string().regex(/^(unrounded|rounded|exact|refusal)/),
})
const rowSchema = z.strictObject({
  id: z.string(), standard: z.string(), section: z.string(),
  inputs: z.array(quantitySchema).min(1), expected: z.array(expectedSchema).min(1),
  source: z.strictObject({ title: z.string(), edition: z.string(), where: z.string(), url_or_repo: z.string().optional() }),
  note: z.string(),
})
/** A printed example: inputs, what was printed, and where. */
export type PublishedRow = Readonly<z.infer<typeof rowSchema>>
export type Expected = PublishedRow['expected'][number]

const disagreementSchema = z.strictObject({ row: z.string(), quantity: z.string(), got: z.string(), why: z.string(), argued: z.string() })
export type Disagreement = Readonly<z.infer<typeof disagreementSchema>>

/** What was computed for one printed quantity: a double, a decimal, a rounded text, or the codes of a refusal. */
export type Got = number | Decimal | string

/** The rows of one file in `tests/published`, as they were transcribed. */
export function publishedRows(file: string): readonly PublishedRow[] {
  return z.array(rowSchema).min(1).parse(JSON.parse(readFileSync(join(FOLDER, file), 'utf8')))
}

export const DISAGREEMENTS: readonly Disagreement[] = z.array(disagreementSchema).parse(JSON.parse(readFileSync(join(FOLDER, 'disagreements.json'), 'utf8')))

/** Every id in every file of `tests/published`, whatever the shape of its rows. */
export function publishedIds(): readonly string[] {
  return readdirSync(FOLDER, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.json') && name !== 'disagreements.json')
    .flatMap((name) => [...readFileSync(join(FOLDER, name), 'utf8').matchAll(/"id":\s*"([^"]+)"/g)].map((match) => match[1] ?? ''))
}

/** The printed text of an input, and its unit. */
export function inputOf(row: PublishedRow, name: string): { readonly value: string; readonly unit: string } {
  const input = row.inputs.find((one) => one.name === name)
  if (input === undefined) throw new Error(`${row.id} has no input “${name}”`)
  return input
}

/**
 * One test for every row and printed quantity, named `mpms11.1-2004/11.1.6.1/ex1: CTL`.
 * @param file rows, below `tests/published`
 * @param compute what the row's inputs give for one expected quantity
 */
export function checkPublishedRows(file: string, compute: (row: PublishedRow, expected: Expected) => Got): void {
  describe(`published: ${file}`, () => {
    for (const row of publishedRows(file)) {
      for (const expected of row.expected) {
        it(`${row.id}: ${expected.name}`, () => {
          const difference = differenceOf(expected, compute(row, expected))
          const listed = DISAGREEMENTS.find((one) => one.row === row.id && one.quantity === expected.name)
          if (listed === undefined) expect(difference, difference === null ? '' : report(row, expected, difference)).toBeNull()
          else expect(difference, `${row.id}: ${expected.name} now agrees; strike it off disagreements.json (${listed.why})`).not.toBeNull()
        })
      }
    }
  })
}

/** Null when it agrees, else what was got and by how much it differs. */
export function differenceOf(expected: Expected, got: Got): { readonly got: string; readonly by: string } | null {
  const [kind = ''] = expected.rounding.split(/[ ,;:]/)
  if (kind === 'refusal') return got === expected.value ? null : { got: String(got), by: 'other codes' }
  if (kind === 'rounded') {
    if (typeof got !== 'string') throw new Error(`${expected.name} was printed rounded: compare the rounded text`)
    return got === expected.value ? null : { got, by: inLastDigits(expected.value, new Decimal(got)) }
  }
  const value = new Decimal(got)
  const printed = new Decimal(expected.value)
  const compared = /compared to (\d+) decimals/.exec(expected.rounding)?.[1]
  const unit = compared === undefined ? unitOfLastDigit(expected.value) : new Decimal(10).pow(-Number(compared))
  const allowed = kind === 'exact' ? new Decimal(0) : unit.div(2)
  return value.minus(printed).abs().lte(allowed) ? null : { got: value.toFixed(), by: inLastDigits(expected.value, value) }
}

function unitOfLastDigit(text: string): Decimal {
  return new Decimal(10).pow(-(text.split('.')[1]?.length ?? 0))
}

function inLastDigits(printed: string, got: Decimal): string {
  return `${got.minus(printed).div(unitOfLastDigit(printed)).toSignificantDigits(4).toFixed()} units of the last printed digit`
}

function report(row: PublishedRow, expected: Expected, difference: { readonly got: string; readonly by: string }): string {
  return [
    `${row.id}: ${expected.name} (${row.source.title}, ${row.source.edition}, ${row.source.where})`,
    ...row.inputs.map((input) => `  ${input.name} = ${input.value} ${input.unit}`),
    `  expected ${expected.value} ${expected.unit} (${expected.rounding})`,
    `  got      ${difference.got}`,
    `  differs by ${difference.by}`,
    ...(row.note === '' ? [] : [`  note: ${row.note}`]),
  ].join('\n')
}
