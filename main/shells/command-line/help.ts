import { z } from 'zod'
import { OPERATION_NAMES, OPERATIONS, type OperationName } from '../../operations/contracts/index.ts'

/** The table of operations, a line each. */
export function help(): string {
  const width = Math.max(...OPERATION_NAMES.map((name) => name.length))
  const lines = (wanted: boolean): string[] => OPERATION_NAMES
    .filter((name) => (OPERATIONS[name].ledger === 'none') === wanted)
    .map((name) => `  ${name.padEnd(width)}  ${OPERATIONS[name].says}`)
  return [
    'dipledger: custody-transfer tickets from tank gauges, and the book kept honest afterwards',
    '',
    'npx dipledger <operation> [input.json | -] [file]   JSON in, JSON out; a file where an operation takes one',
    'npx dipledger help                                  this table',
    'npx dipledger schema <operation>                    JSON Schema of input and output',
    '',
    'Without a ledger:',
    ...lines(true),
    '',
    'With a ledger, named by --ledger or DIPLEDGER_LEDGER: a path, or postgresql://USER@HOST:PORT/DATABASE (password in PGPASSWORD):',
    ...lines(false),
    '',
    'With people on record: --as PERSON, the passphrase from DIPLEDGER_PASSPHRASE or asked on the terminal.',
    '--progress writes the steps of a long operation to standard error as JSON lines.',
    'Exit code: 0 done; 2 refused, with every finding on standard error; 1 a fault.',
    '',
  ].join('\n')
}

/** What goes into an operation and what comes out, as JSON Schema. */
export function schemaOf(operation: OperationName): object {
  const { name, says, roles, ledger, input, output } = OPERATIONS[operation]
  return { name, says, roles, ledger, input: z.toJSONSchema(input, { io: 'input' }), output: z.toJSONSchema(output, { io: 'output' }) }
}
