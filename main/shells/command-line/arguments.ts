import { parseArgs } from 'node:util'
import { accepted, refused, type Finding, type Outcome } from '../../../core/refusal/index.ts'
import { isOperation, unknownOperation } from '../../operations/call-operation.ts'
import type { OperationName } from '../../operations/contracts/index.ts'

/** What was asked on the command line. */
export type Asked =
  | { readonly kind: 'help' }
  | { readonly kind: 'schema'; readonly operation: OperationName }
  | {
      readonly kind: 'call'
      readonly operation: OperationName
      /** Up to two: a JSON file or `-`, and for operations that take a file, the file. */
      readonly paths: readonly string[]
      readonly ledger: string | undefined
      /** Id of the person on record who calls. */
      readonly person: string | undefined
      /** Steps as JSON lines on standard error even when that is no terminal. */
      readonly progress: boolean
    }

const OPTIONS = { ledger: { type: 'string' }, as: { type: 'string' }, progress: { type: 'boolean' }, help: { type: 'boolean', short: 'h' } } as const

/** Reads the arguments; refuses an unknown option or operation. */
export function readArguments(args: readonly string[], environment: Readonly<Record<string, string | undefined>>): Outcome<Asked> {
  const words = wordsIn(args)
  if (!words.ok) return words
  const { values, positionals } = words.value
  const [first = 'help', second, ...rest] = positionals
  if (values.help === true || first === 'help') return accepted({ kind: 'help' })
  if (first === 'schema') return operationNamed(second ?? '', (operation) => ({ kind: 'schema', operation }))
  const paths = second === undefined ? [] : [second, ...rest]
  if (paths.length > 2) return refused(argument(paths.slice(2).join(' '), 'an operation, then its input, then at most one file'))
  const ledger = values.ledger ?? environment['DIPLEDGER_LEDGER']
  return operationNamed(first, (operation) => ({ kind: 'call', operation, paths, ledger: ledger === '' ? undefined : ledger, person: values.as, progress: values.progress === true }))
}

function wordsIn(args: readonly string[]): Outcome<ReturnType<typeof parse>> {
  try {
    return accepted(parse(args))
  } catch (error) {
    return refused(argument(args.join(' '), error instanceof Error ? error.message : String(error)))
  }
}

function parse(args: readonly string[]) {
  return parseArgs({ args: [...args], options: OPTIONS, allowPositionals: true, strict: true })
}

function operationNamed(name: string, asked: (operation: OperationName) => Asked): Outcome<Asked> {
  if (isOperation(name)) return accepted(asked(name))
  return refused(unknownOperation(name))
}

function argument(value: string, limit: string): Finding {
  return { code: 'malformed-input', path: 'command line', value, limit, clause: 'HOUSE command line' }
}
