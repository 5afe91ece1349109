import { z } from 'zod'
import { differences, isData, isSame, said, type Difference } from './first-difference.ts'

/** A field in which one version of something differs from the version before it. Texts as they are stored; null where there is none. */
export const changeSchema = z.strictObject({
  /** `tank.capacityTable.rows`. */
  path: z.string(),
  /** Of a table, its first row that differs. */
  before: z.string().nullable(),
  after: z.string().nullable(),
  /** Of a table: how many rows differ, and how many there were and are. */
  rows: z.strictObject({ differ: z.number(), before: z.number(), after: z.number() }).optional(),
})
export type Change = Readonly<z.infer<typeof changeSchema>>

/** A text is kept to so many characters; a certificate of a signer is longer, and its fingerprint stands beside it. */
const LONGEST = 400

/**
 * The fields in which a version differs from the one before it, in the order in which they stand. A table counts as one field:
 * its rows that differ are counted and the first is told, so that the list stays as short as the fields are many.
 * @param before body of the entry before
 * @param after body of the entry
 * @source HOUSE audit trail
 */
export function changedFields(before: unknown, after: unknown): readonly Change[] {
  return differences(before, after, [], Array.isArray).flatMap(eachField).map(changeOf)
}

/** What came or went as a whole, field by field. */
function eachField(found: Difference): readonly Difference[] {
  const [one, other] = [found.one ?? {}, found.other ?? {}]
  if (!isFields(one) || !isFields(other)) return [found]
  return differences(one, other, found.place, Array.isArray).flatMap(eachField)
}

function isFields(value: unknown): boolean {
  return isData(value) && !Array.isArray(value)
}

function changeOf({ place, one, other }: Difference): Change {
  const path = place.join('.')
  const [stood, stands] = [listOf(one), listOf(other)]
  if (stood === undefined || stands === undefined || ![...stood, ...stands].some(isData)) return { path, before: written(one), after: written(other) }
  const [first, ...others] = rowsThatDiffer(byLevel(stood), byLevel(stands)) ?? rowsThatDiffer(byPlace(stood), byPlace(stands)) ?? []
  return { path, before: written(first?.[0]), after: written(first?.[1]), rows: { differ: others.length + 1, before: stood.length, after: stands.length } }
}

function listOf(value: unknown): readonly unknown[] | undefined {
  return value === undefined ? [] : Array.isArray(value) ? value : undefined
}

type Pair = readonly [unknown, unknown]

/** The rows that differ, that of the lowest level or place first; undefined when none does. */
function rowsThatDiffer(stood: ReadonlyMap<string, unknown>, stands: ReadonlyMap<string, unknown>): readonly Pair[] | undefined {
  const keys = [...new Set([...stood.keys(), ...stands.keys()])].filter((key) => !isSame(stood.get(key), stands.get(key)))
  return keys.length === 0 ? undefined : keys.toSorted((a, b) => Number(a) - Number(b)).map((key): Pair => [stood.get(key), stands.get(key)])
}

/** A row that came or went in a capacity table is one row, not all behind it: rows are held against each other by their first cell. */
function byLevel(rows: readonly unknown[]): ReadonlyMap<string, unknown> {
  return new Map(rows.map((row, i) => [Array.isArray(row) ? String(row[0]) : String(i), row]))
}

function byPlace(rows: readonly unknown[]): ReadonlyMap<string, unknown> {
  return new Map(rows.map((row, i) => [String(i), row]))
}

/** Lists of plain values as they are read, everything else as it is stored. */
function written(value: unknown): string | null {
  if (value === undefined) return null
  return said(Array.isArray(value) && value.length > 0 && !value.some(isData) ? value.join(', ') : value, LONGEST)
}
