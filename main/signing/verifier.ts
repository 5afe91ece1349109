import { randomBytes, timingSafeEqual } from 'node:crypto'
import { z } from 'zod'
import { derived, PASSPHRASE_COST } from './derive.ts'

/** What is kept of the passphrase of somebody who works at a desk. The cost stands in it, so that old ones hold after the default has grown. */
const verifierSchema = z.strictObject({
  form: z.literal('dipledger-passphrase-1'),
  N: z.number().int().min(2 ** 10).max(2 ** 20).refine((cost) => Number.isInteger(Math.log2(cost))),
  r: z.literal(8), p: z.literal(1),
  salt: z.base64(), digest: z.base64(),
})

/**
 * What a passphrase can be checked against later, and from which it cannot be read.
 * @param cost scrypt N, written into the result
 */
export async function verifierOf(passphrase: string, cost = PASSPHRASE_COST): Promise<string> {
  const salt = randomBytes(16)
  const digest = await derived(passphrase, salt, cost)
  return JSON.stringify({ form: 'dipledger-passphrase-1', N: cost, r: 8, p: 1, salt: salt.toString('base64'), digest: digest.toString('base64') })
}

/**
 * Whether a passphrase is the one. It costs the same when it is wrong, when it differs early or late, and when there is no
 * verifier at all.
 * @param cost scrypt N where there is no verifier
 */
export async function passphraseFits(verifier: string | undefined, passphrase: string, cost = PASSPHRASE_COST): Promise<boolean> {
  const kept = verifier === undefined ? undefined : readVerifier(verifier)
  const salt = kept === undefined ? randomBytes(16) : Buffer.from(kept.salt, 'base64')
  const expected = kept === undefined ? randomBytes(32) : Buffer.from(kept.digest, 'base64')
  const digest = await derived(passphrase, salt, kept?.N ?? cost)
  return expected.length === digest.length && timingSafeEqual(expected, digest) && kept !== undefined
}

function readVerifier(text: string): z.infer<typeof verifierSchema> | undefined {
  try {
    return verifierSchema.safeParse(JSON.parse(text)).data
  } catch {
    return undefined
  }
}
