import { randomUUID } from 'node:crypto'
import { Refused, type Finding } from '../../core/refusal/index.ts'
import { fault, refusal, type Answer } from './answer.ts'
import type { Call, Context, Handlers, LedgerContext, ParsedInput } from './context.ts'
import { OPERATIONS, type OperationName, type OutputOf } from './contracts/index.ts'
import { LedgerFault } from '../store/index.ts'
import { admit } from './desk/admit.ts'
import { malformedInput } from './malformed-input.ts'
import { HANDLERS } from './table.ts'
import { unwritableText } from './unwritable-text.ts'

/**
 * The one way to do an operation, whatever the shell. It always answers and never throws.
 * @param input not yet parsed
 * @param handlers those of the table, unless a test hands others in
 */
export async function callOperation<N extends OperationName>(name: N, input: unknown, context: Context, call: Call, handlers?: Handlers): Promise<Answer<OutputOf<N>>>
export async function callOperation(name: string, input: unknown, context: Context, call: Call, handlers?: Handlers): Promise<Answer>
export async function callOperation(name: string, input: unknown, context: Context, call: Call, handlers: Handlers = HANDLERS): Promise<Answer> {
  if (!isOperation(name)) {
    return refusal([unknownOperation(name)])
  }
  try {
    return await perform(name, input, context, call, handlers)
  } catch (error) {
    if (error instanceof Refused) return refusal(error.findings)
    if (call.signal.aborted) return fault('cancelled')
    return faultOnRecord(name, error, context)
  }
}

/** That there is no operation of a name. */
export function unknownOperation(name: string): Finding {
  return { code: 'unknown-operation', path: 'operation', value: name, limit: '“npx dipledger help” lists those there are', clause: 'HOUSE operations' }
}

/** Whether there is an operation of this name. */
export function isOperation(name: string): name is OperationName {
  return Object.hasOwn(OPERATIONS, name)
}

async function perform<N extends OperationName>(name: N, input: unknown, context: Context, call: Call, handlers: Handlers): Promise<Answer> {
  const admitted = await admit(name, context)
  const within: Context = { ...admitted, perform: (other, otherInput, otherContext, otherCall) => done(other, otherInput, otherContext, otherCall, handlers) }
  return { result: await done(name, input, within, call, handlers) }
}

/** Parses the input, does the operation and parses what came out. Refusals are thrown. */
async function done<N extends OperationName>(name: N, input: unknown, context: Context, call: Call, handlers: Handlers): Promise<unknown> {
  const contract = OPERATIONS[name]
  const parsed = contract.input.safeParse(input)
  if (!parsed.success) throw new Refused(malformedInput(parsed.error.issues, input))
  const unwritable = contract.ledger === 'writes' ? unwritableText(input) : []
  if (unwritable.length > 0) throw new Refused(unwritable)
  if (contract.ledger !== 'none' && context.store === null) {
    throw new Refused([{ code: 'missing-value', path: 'ledger', value: '', limit: `${name} needs an open ledger; on the command line name it with --ledger or DIPLEDGER_LEDGER`, clause: 'HOUSE operations' }])
  }
  call.signal.throwIfAborted()
  // The schema of this very name has just parsed the input, and the ledger is there where the contract asks for one.
  const result = await handlers[name](parsed.data as ParsedInput<N>, context as LedgerContext, call)
  return contract.output.parse(result)
}

/** A fault goes to the log whole; the caller hears what can be done about a ledger's place, else a reference only. */
function faultOnRecord(name: string, error: unknown, context: Context): Answer {
  const reference = randomUUID().slice(0, 8)
  const told = error instanceof Error ? (error.stack ?? error.message) : String(error)
  context.log(`${context.now()} fault ${reference} in ${name}: ${told}`)
  if (error instanceof LedgerFault) return fault(error.message)
  return fault(`Something broke inside Dipledger; your input is not to blame. The log has it under reference ${reference}.`)
}
