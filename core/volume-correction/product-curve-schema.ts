import { z } from 'zod'

const written = z.string().min(1).max(64)

/** One line of a certificate: a temperature, and the density or the VCF there. */
const densityPoint = z.strictObject({ temperature: written, density: written })
const vcfPoint = z.strictObject({ temperature: written, vcf: written })

/**
 * Density, or VCF, against temperature as a laboratory certificate gives it, in the order of rising temperature; with the
 * certificate's number, laboratory and date.
 */
export const productCurveSchema = z.strictObject({
  certificate: z.string().trim().min(1).max(80),
  laboratory: z.string().trim().min(1).max(80),
  /** `2026-03-14` */
  date: z.iso.date(),
  /** How far a density that is stated or observed may be from the curve, which it then shifts: `0.5 %`. */
  tolerance: written.optional(),
  points: z.union([z.array(densityPoint).min(2).max(500), z.array(vcfPoint).min(2).max(500)]),
})
export type ProductCurve = Readonly<z.infer<typeof productCurveSchema>>
