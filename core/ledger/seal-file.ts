import { z } from 'zod'
import { sealSchema, sealSignatureSchema } from './period.ts'

/** A seal to take away: with its signature and the certificate of whoever signed it, it is checked with no ledger. */
export const sealFileSchema = z.strictObject({
  schema: z.literal('dipledger-seal-file-1'),
  seal: sealSchema, signature: sealSignatureSchema,
  /** X.509 certificate, base64 DER. */
  certificate: z.string(),
})
export type SealFile = Readonly<z.infer<typeof sealFileSchema>>
