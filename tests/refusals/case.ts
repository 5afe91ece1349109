import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { z } from 'zod'

const FOLDER = join(import.meta.dirname, 'cases')
const BASES = join(import.meta.dirname, 'bases')

const findingSchema = z.strictObject({ code: z.string(), path: z.string(), value: z.string(), limit: z.string(), clause: z.string() })

const stepSchema = z.strictObject({
  operation: z.string(),
  /** The instant at which it is done, instead of the bench's. */
  at: z.string().optional(),
  /** A whole lawful input in `bases/`, … */
  base: z.string().optional(),
  /** … in which these places are set to something wrong; `null` takes the place away. */
  set: z.record(z.string(), z.json()).optional(),
  input: z.record(z.string(), z.json()).optional(),
  /** In `given`: that it is refused belongs to the case. */
  refused: z.literal(true).optional(),
  /** Lines of a text file, for inputs that take one. */
  file: z.array(z.string()).optional(),
})
export type Step = z.infer<typeof stepSchema>

/** A file that provokes one refusal: what it is about, what is done, and the exact answer. */
export const caseSchema = z.strictObject({
  says: z.string(),
  /** The ledger it is done in: none, an empty one, or one with the sample terminal. */
  ledger: z.enum(['empty', 'terminal']).optional(),
  /** What is done first; the operation `raw-sql` alters the ledger's file behind the program's back. */
  given: z.array(stepSchema).optional(),
  do: stepSchema,
  /** Where the finding shows when it does not stop the operation: it is printed on the ticket. */
  shows: z.literal('exceptions').optional(),
  answer: z.array(findingSchema).min(1),
})
export type Case = z.infer<typeof caseSchema>

export function cases(): readonly (readonly [name: string, Case])[] {
  return readdirSync(FOLDER).filter((file) => file.endsWith('.json')).map((file) => file.slice(0, -5)).sort().map((name) => [name, caseSchema.parse(JSON.parse(readFileSync(join(FOLDER, `${name}.json`), 'utf8')))] as const)
}

/** The input of a step: its base with the changes made. */
export function inputOf(step: Step): unknown {
  const input: unknown = step.base === undefined ? structuredClone(step.input ?? {}) : JSON.parse(readFileSync(join(BASES, `${step.base}.json`), 'utf8'))
  for (const [path, value] of Object.entries(step.set ?? {})) setAt(input as Record<string, unknown>, path.split('.'), value)
  if (step.file) (input as Record<string, unknown>)['file'] = Buffer.from(step.file.join('\n')).toString('base64')
  return input
}

function setAt(target: Record<string, unknown>, [first = '', ...rest]: readonly string[], value: unknown): void {
  if (rest.length > 0) setAt(target[first] as Record<string, unknown>, rest, value)
  else if (value === null) delete target[first]
  else target[first] = value
}
