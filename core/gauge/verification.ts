import { z } from 'zod'
import { exceptionSchema, quantitySchema, worksheetLineSchema } from '../worksheet/index.ts'
import { levelSchema, tapeSchema } from './tape.ts'

const written = z.string().min(1).max(64)

/** What an automatic gauge is verified for; custody is the narrower. */
export const VERIFICATION_USES = ['custody', 'inventory'] as const
/** Whose limits: API MPMS 3.1B in service, or OIML R 85 installed, class 2 or 3. */
export const VERIFICATION_RULES = ['MPMS-3.1B', 'OIML-R85 class 2', 'OIML-R85 class 3'] as const

/** One level at which the automatic gauge was held against a hand gauge. */
const comparisonSchema = z.strictObject({
  /** Innage that the automatic gauge showed. */
  automatic: written,
  hand: levelSchema,
  tape: tapeSchema.optional(),
})

/** An automatic level gauge against hand gauges: as it was found and, where it was set, as it was left. */
export const gaugeVerificationSchema = z.strictObject({
  tank: z.string(),
  /** Name of the gauge, as snapshots name it: `LT-101`. */
  gauge: z.string().min(1).max(40),
  /** UTC instant. */
  at: z.string(),
  /** Who took the hand gauges. */
  by: z.string().min(1).max(80),
  use: z.enum(VERIFICATION_USES),
  rule: z.enum(VERIFICATION_RULES),
  /** The first verification, and any after work on the gauge, is at three levels; a later one may be at one. */
  occasion: z.enum(['initial', 'subsequent']),
  asFound: z.array(comparisonSchema).min(1).max(9),
  /** After it was set; absent: it was left as found. */
  asLeft: z.array(comparisonSchema).min(1).max(9).optional(),
  /** When the next one is due, a UTC instant; a later custody gauge is refused. */
  nextDue: z.string().optional(),
  remarks: z.string().max(500).optional(),
})
export type GaugeVerification = Readonly<z.infer<typeof gaugeVerificationSchema>>

const stageSchema = z.strictObject({
  points: z.array(z.strictObject({ automatic: quantitySchema, hand: quantitySchema, difference: quantitySchema, limit: quantitySchema, within: z.boolean() })),
  within: z.boolean(),
})

export const verificationResultSchema = z.strictObject({
  /** As it was left; as it was found where it was not set. */
  verdict: z.enum(['within', 'outside']),
  asFound: stageSchema,
  asLeft: stageSchema.nullable(),
  lines: z.array(worksheetLineSchema),
  exceptions: z.array(exceptionSchema),
})
export type VerificationResult = Readonly<z.infer<typeof verificationResultSchema>>
export type VerificationStage = VerificationResult['asFound']

/** What stands on record of one verification, for whoever asks whether a gauge may be used. */
export const standingVerificationSchema = z.strictObject({
  seq: z.number(), tank: z.string(), gauge: z.string(), at: z.string(), use: z.enum(VERIFICATION_USES), rule: z.enum(VERIFICATION_RULES),
  verdict: z.enum(['within', 'outside']),
  /** Greatest difference as left, and its limit: `-7 mm`, `4 mm`. */
  greatest: z.string(), limit: z.string(),
  nextDue: z.string().nullable(),
})
export type StandingVerification = Readonly<z.infer<typeof standingVerificationSchema>>
