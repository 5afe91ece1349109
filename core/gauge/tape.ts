import { z } from 'zod'

const written = z.string().min(1).max(64)

/** The tape, its bob, and the rule that its repeated readings are accepted by. */
export const tapeSchema = z.strictObject({
  /** Number of the tape's certificate. */
  certificate: z.string().min(1).max(40).optional(),
  /** Temperature of the tape in the tank, `88 degF`; absent: not corrected for temperature. */
  temperature: written.optional(),
  /** Temperature at which the tape was standardised, `60 degF` or `20 degC`; needed with `temperature`. */
  standardAt: written.optional(),
  /** What the certificate adds to a reading of this length, `-1 mm`. */
  correction: written.optional(),
  /** Bob on the tape; with it, each ullage is the tape at the reference point and the cut on the bob. */
  bob: z.enum(['outage', 'innage']).optional(),
  /** Rule for repeated readings; absent: that of API MPMS 3.1A. */
  acceptance: z.enum(['MPMS-3.1A', 'CFR43-3174.6']).optional(),
})
export type Tape = Readonly<z.infer<typeof tapeSchema>>

/** A reading of the tape, and the cut on the bob where there is one. */
export const tapeReadingSchema = z.strictObject({ read: written, bob: written.optional() })

/**
 * The level as it was read: one innage or one ullage, or repeated readings of either in the order in which they were
 * taken; with every ullage the reference gauge height that was found.
 */
export const levelSchema = z.union([
  z.strictObject({ innage: written }),
  z.strictObject({ ullage: written, observedReferenceHeight: written.optional() }),
  z.strictObject({ by: z.enum(['innage', 'ullage']), readings: z.array(tapeReadingSchema).min(1).max(12), observedReferenceHeight: written.optional() }),
])
export type WrittenLevel = Readonly<z.infer<typeof levelSchema>>
