import { existsSync } from 'node:fs'
import { accepted, refused, type Finding, type Outcome } from '../../../core/refusal/index.ts'
import { fault, refusal, type Answer } from '../../operations/answer.ts'
import { callOperation } from '../../operations/call-operation.ts'
import type { Context } from '../../operations/context.ts'
import { OPERATIONS, type OperationName, type Progress } from '../../operations/contracts/index.ts'
import { isServerAddress } from '../../store/index.ts'
import { sitDown } from '../../operations/desk/sit-down.ts'
import { openContext } from '../open-context.ts'
import { readArguments, type Asked } from './arguments.ts'
import { help, schemaOf } from './help.ts'
import { readInput, type Source } from './input.ts'

/** The world around the command line. */
export interface Surroundings extends Source {
  readonly environment: Readonly<Record<string, string | undefined>>
  /** Asks a person at the terminal; undefined where there is none, or nothing was answered. */
  readonly askPassphrase: (question: string) => Promise<string | undefined>
  readonly write: (text: string) => void
  readonly writeError: (text: string) => void
  readonly errorIsTerminal: boolean
  readonly signal: AbortSignal
}

export const DONE = 0
export const FAULT = 1
export const REFUSED = 2

/** Does what the arguments ask and gives the exit code. */
export async function runCommandLine(args: readonly string[], around: Surroundings): Promise<number> {
  const asked = readArguments(args, around.environment)
  if (!asked.ok) return tell(refusal(asked.findings), around)
  if (asked.value.kind === 'help') return say(around, help())
  if (asked.value.kind === 'schema') return say(around, json(schemaOf(asked.value.operation)))
  const { operation } = asked.value
  const answer = await call(asked.value, around)
  const code = tell(answer, around)
  return code === DONE && 'result' in answer && !holds(operation, answer.result) ? REFUSED : code
}

async function call(asked: Extract<Asked, { kind: 'call' }>, around: Surroundings): Promise<Answer> {
  const input = await readInput(asked.operation, asked.paths, around).catch((error: unknown) => {
    if (around.signal.aborted) return undefined
    throw error
  })
  if (!input) return fault('cancelled')
  if (!input.ok) return refusal(input.findings)
  const ledger = ledgerFor(asked.operation, asked.ledger)
  if (!ledger.ok) return refusal(ledger.findings)
  let context: Context | undefined
  try {
    context = await openContext(ledger.value, (line) => around.writeError(`${line}\n`))
    const turnedAway = await signIn(asked.person, context, around)
    if (turnedAway !== undefined) return turnedAway
    return await callOperation(asked.operation, input.value, context, { progress: stepWriter(asked.progress, around), signal: around.signal })
  } catch (error) {
    return fault(`The ledger cannot be opened: ${error instanceof Error ? error.message : String(error)}`)
  } finally {
    await context?.store?.close()
  }
}

/** The passphrase comes from the environment or from the terminal, never from the arguments, which others can see. */
async function signIn(person: string | undefined, context: Context, around: Surroundings): Promise<Answer | undefined> {
  if (person === undefined) return undefined
  const passphrase = around.environment['DIPLEDGER_PASSPHRASE'] ?? await around.askPassphrase(`Passphrase of ${person}: `)
  if (passphrase !== undefined) return sitDown(context, person, passphrase)
  return refusal([{ code: 'missing-value', path: 'passphrase', value: '', limit: 'set DIPLEDGER_PASSPHRASE, or type it on a terminal', clause: 'HOUSE command line' }])
}

/** Only an operation that writes may make a ledger where there is none. */
function ledgerFor(operation: OperationName, path: string | undefined): Outcome<string | null> {
  if (path === undefined) return accepted(null)
  if (OPERATIONS[operation].ledger === 'writes' || isServerAddress(path) || existsSync(path)) return accepted(path)
  const finding: Finding = { code: 'missing-value', path: 'ledger', value: path, limit: `there is no ledger at “${path}”`, clause: 'HOUSE command line' }
  return refused(finding)
}

/** Steps for a person at a terminal, or as JSON lines when asked for; else standard error holds the findings alone. */
function stepWriter(asLines: boolean, around: Surroundings): (step: Progress) => void {
  if (asLines) return (step) => around.writeError(`${JSON.stringify({ progress: step })}\n`)
  if (around.errorIsTerminal) return ({ done, of, what }) => around.writeError(`${done} of ${of}  ${what}\n`)
  return () => undefined
}

function tell(answer: Answer, around: Surroundings): number {
  if ('result' in answer) return say(around, json(answer.result))
  if ('refused' in answer) {
    around.writeError(json({ error: { findings: answer.refused.findings } }))
    return REFUSED
  }
  around.writeError(json({ error: { fault: answer.fault.message } }))
  return FAULT
}

/** A check that was done but does not hold is told apart by the exit code. */
function holds(operation: OperationName, result: unknown): boolean {
  const { verdict } = OPERATIONS[operation]
  if (verdict === undefined || typeof result !== 'object' || result === null) return true
  return Object.entries(result).some(([field, value]) => field === verdict && value === true)
}

function say(around: Surroundings, text: string): number {
  around.write(text)
  return DONE
}

function json(value: unknown): string {
  return `${JSON.stringify(value, null, 2)}\n`
}
