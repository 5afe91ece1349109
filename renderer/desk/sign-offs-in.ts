import { z } from 'zod'

const signing = z.looseObject({ signOffs: z.array(z.object({ check: z.string(), reason: z.string() })) })

/** What whoever prepared the close of a period signed off, each with the reason: whoever approves puts a name to it. */
export function signOffsIn(input: unknown): readonly { readonly check: string; readonly reason: string }[] {
  const read = signing.safeParse(input)
  return read.success ? read.data.signOffs : []
}
