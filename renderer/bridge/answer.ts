import { z } from 'zod'
import type { OperationName, OutputOf, Progress } from '../../main/operations/contracts/index.ts'
import { FaultInMain, RefusedByMain } from './bridge.ts'

const spokenFinding = z.object({
  code: z.string(), path: z.string(), value: z.string(), limit: z.string(), clause: z.string(), message: z.string(),
})
const progressStep = z.object({ done: z.number(), of: z.number(), what: z.string() })

const envelope = z.union([
  z.strictObject({ progress: progressStep }),
  z.strictObject({ refused: z.object({ findings: z.array(spokenFinding) }) }),
  z.strictObject({ fault: z.object({ message: z.string() }) }),
  z.strictObject({ result: z.unknown() }),
])

/** What comes over the bridge for one call: steps, then one last answer. */
export type Envelope = z.infer<typeof envelope>

/** Reads what the other side sent; anything else is a fault. */
export function readEnvelope(sent: unknown): Envelope {
  const read = envelope.safeParse(sent)
  return read.success ? read.data : { fault: { message: 'The answer is not of a form this window knows.' } }
}

/** A step of a call still running, or undefined when the envelope is the last. */
export function stepIn(answer: Envelope): Progress | undefined {
  return 'progress' in answer ? answer.progress : undefined
}

/**
 * The result in a last answer; throws what was refused or broke. The result has the operation's output type because
 * the other side parsed it by the same contract before it answered.
 */
export function settle<N extends OperationName>(_name: N, answer: Envelope): OutputOf<N> {
  if ('result' in answer) return answer.result as OutputOf<N>
  if ('refused' in answer) throw new RefusedByMain(answer.refused.findings)
  if ('fault' in answer) throw new FaultInMain(answer.fault.message)
  throw new FaultInMain('The answer ended before its result.')
}
