import { z } from 'zod'
import { VOLUME_UNITS } from '../../units/index.ts'
import { SHELL_MATERIALS } from '../tank.ts'

const written = z.string().min(1).max(64)

const deadwoodSchema = z.strictObject({
  name: z.string().min(1).max(80),
  /** Levels above the datum plate between which it lies. */
  from: written, to: written,
  volume: written,
  /** Whether it takes room from the liquid, as a pipe, or gives room, as a manhole. */
  counts: z.enum(['takes', 'gives']),
})

/** What every survey says, whatever the tank's shape. */
const common = {
  certificate: z.string().min(1).max(80),
  issuedBy: z.string().min(1).max(80),
  issuedOn: z.string().max(10),
  revision: z.string().min(1).max(20).optional(),
  /** Temperature for which the table is made. */
  baseTemperature: written,
  /** Temperature of the shell when it was measured. */
  measuredAt: written,
  shellMaterial: z.enum(SHELL_MATERIALS),
  volumeUnit: z.enum(VOLUME_UNITS),
  levelUnit: z.enum(['m', 'cm', 'mm', 'in', 'ft', 'ft-in']),
  /** Step of the table: `10 mm`, `1/8 in`. */
  step: written,
  deadwood: z.array(deadwoodSchema).max(60),
}

const courseSchema = z.strictObject({
  height: written,
  plate: written,
  /** Paint outside the plate; absent: none. */
  paint: written.optional(),
  /** Outside circumferences, or inside radii, as read at the levels of this course. */
  readings: z.array(written).min(1).max(12),
  /** What laps and step-overs added to the tape, taken off. */
  lap: written.optional(),
})

const bottomSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('flat') }),
  z.strictObject({ kind: z.enum(['cone-up', 'cone-down']), height: written }),
  /** Heights above the corner of bottom and shell, by the distance from the centre, from 0 outwards. */
  z.strictObject({ kind: z.literal('surveyed'), points: z.array(z.strictObject({ distance: written, height: written })).min(2).max(60) }),
])

const uprightSchema = z.strictObject({
  shape: z.literal('upright-cylinder'), ...common,
  measured: z.enum(['outside-circumference', 'inside-radius']),
  /** The tape: temperature at which it is true, and what its certificate adds to a reading. */
  tape: z.strictObject({ trueAt: written, correction: written.optional() }).optional(),
  /** From the bottom up. */
  courses: z.array(courseSchema).min(1).max(20),
  bottom: bottomSchema,
  /** Height of the datum plate above the corner of bottom and shell; with a minus below it. */
  datum: written,
  /** The liquid whose head stretches the shell, and Young's modulus of the steel; absent: the table is for an unstressed shell. */
  head: z.strictObject({ density: written, modulus: written }).optional(),
  /** What stood in the tank when it was measured; absent: empty. */
  filledTo: z.strictObject({ level: written, density: written, modulus: written }).optional(),
  tilt: z.strictObject({ ratio: written, circumferences: z.enum(['square', 'level']), dips: z.enum(['plumb', 'along-shell']) }).optional(),
  /** A floating roof that the table deducts, graded over its critical zone. */
  roof: z.strictObject({ mass: written, densityInAir: written, from: written, to: written }).optional(),
})

const endSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.enum(['flat', 'hemispherical']) }),
  z.strictObject({ kind: z.enum(['ellipsoidal', 'dished']), depth: written }),
  z.strictObject({ kind: z.literal('torispherical'), crown: written, knuckle: written }),
])

const lyingSchema = z.strictObject({
  shape: z.literal('horizontal-cylinder'), ...common,
  /** Inside diameter, and straight length between the ends. */
  diameter: written, length: written,
  ends: z.tuple([endSchema, endSchema]),
  /** Height of the datum above the lowest inside point. */
  datum: written,
})

const sphereSchema = z.strictObject({
  shape: z.literal('sphere'), ...common,
  /** Inside diameter. */
  diameter: written,
  datum: written,
})

/** What was measured at a tank, from which its capacity table is computed. */
export const tankSurveySchema = z.discriminatedUnion('shape', [uprightSchema, lyingSchema, sphereSchema])
export type TankSurvey = Readonly<z.infer<typeof tankSurveySchema>>
export type UprightSurvey = Extract<TankSurvey, { shape: 'upright-cylinder' }>
export type LyingSurvey = Extract<TankSurvey, { shape: 'horizontal-cylinder' }>
export type SphereSurvey = Extract<TankSurvey, { shape: 'sphere' }>
