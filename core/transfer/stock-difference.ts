import { discriminate, type Rounded } from '../rounding/index.ts'
import { convertVolume, Decimal, kilograms, massIn, type MassUnit, type VolumeUnit } from '../units/index.ts'
import { exactLine, roundedLine, type Quantity, type WorksheetLine } from '../worksheet/index.ts'
import type { Leg } from './stock-legs.ts'

/** A signed volume of one leg. */
export interface SignedVolume { readonly nsv: Decimal; readonly unit: VolumeUnit }

/**
 * Sum of legs in one unit: exact where all are in it, else converted exactly and rounded once.
 * @param legs signed net standard volumes
 * @param unit unit of the answer
 * @source HOUSE stock movements
 */
export function sumOfLegs(legs: readonly SignedVolume[], unit: VolumeUnit): Rounded {
  return discriminate(`volume ${unit}`, legs.reduce((sum, { nsv, unit: own }) => sum.plus(convertVolume(nsv, own, unit)), new Decimal(0)))
}

/** What the difference of a movement is called. */
export interface DifferenceNames { readonly nsv: string; readonly mass: string }

/**
 * The difference of a movement, in volume and, where every leg has one, in mass, as lines. Nothing makes up for it: a
 * loss on the way is negative.
 * @param legs all legs of the movement
 * @source HOUSE stock movements
 */
export function difference(legs: readonly Leg[], names: DifferenceNames, notes: readonly string[]): { readonly nsv: Quantity; readonly lines: readonly WorksheetLine[] } {
  const last = legs.findLast(({ result }) => result.place === 'tank') ?? legs.at(-1)
  if (last === undefined) throw new Error('a movement has at least one leg')
  const { unit, massUnit } = last
  const nsv = sumOfLegs(legs, unit)
  const line = sumLine('DIFF', names.nsv, unit, nsv, legs.map(({ symbols }) => symbols.nsv), notes)
  const masses = legs.flatMap(({ mass, massUnit: own }) => (mass === null ? [] : [{ mass, own }]))
  const inMass = masses.length < legs.length ? [] : [sumLine('DIFFMASS', names.mass, massUnit, sumOfMasses(masses, massUnit), legs.map(({ symbols }) => symbols.mass), [])]
  return { nsv: { value: nsv.text, unit }, lines: [line, ...inMass] }
}

function sumOfMasses(masses: readonly { readonly mass: Decimal; readonly own: MassUnit }[], unit: MassUnit): Rounded {
  const sum = masses.reduce((total, { mass, own }) => total.plus(own === unit ? mass : massIn(kilograms({ text: '', value: mass, unit: own }), unit)), new Decimal(0))
  return discriminate(`mass ${unit}`, sum)
}

function sumLine(symbol: string, name: string, unit: string, sum: Rounded, from: readonly string[], notes: readonly string[]): WorksheetLine {
  const words = { symbol, name, unit, formula: from.join(' + '), from, notes, clause: 'HOUSE stock movements' as const }
  if (sum.value.eq(sum.unrounded)) return { ...exactLine({ ...words, value: sum.value }), value: sum.text, unrounded: sum.text }
  return roundedLine({ ...words, rounded: sum })
}
