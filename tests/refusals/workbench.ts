import { copyFileSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, relative } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import type { Answer } from '../../main/operations/answer.ts'
import { callOperation } from '../../main/operations/call-operation.ts'
import type { Context } from '../../main/operations/context.ts'
import { makeDesk } from '../../main/operations/desk/desk.ts'
import { openContext } from '../../main/shells/open-context.ts'
import { ROOT } from '../boundaries/sources-tree.ts'

/** Somewhere to call operations, with or without a ledger that holds the sample terminal. */
export interface Bench {
  readonly call: (operation: string, input: unknown, at?: string) => Promise<Answer>
}

/** The instant on the bench, so that answers that name it can be written down. */
export const NOW = '2026-10-15T12:00:00.000Z'

/** Passphrase of the identities on the bench. */
export const PASSPHRASE = 'quiet harbour at low water'
const folder = mkdtempSync(join(tmpdir(), 'dipledger-refusals-'))
const open: Context[] = []
let template: Promise<string> | undefined
let count = 0

export async function workbench(holds: 'empty' | 'terminal' | undefined): Promise<Bench> {
  if (holds === undefined) return benchOn(await openContext(null, () => undefined))
  const ledger = join(folder, `bench-${(count += 1)}.sqlite`)
  if (holds === 'terminal') copyFileSync(await (template ??= sampleTerminal()), ledger)
  const context = { ...await openContext(ledger, () => undefined), desk: makeDesk('bench', 2 ** 10) }
  open.push(context)
  return benchOn(context, ledger)
}

export async function closeBenches(): Promise<void> {
  for (const context of open) await context.store?.close()
  rmSync(folder, { recursive: true, force: true })
}

function benchOn(context: Context, ledger = ''): Bench {
  return {
    call: async (operation, input, at = NOW) => {
      if (operation === 'raw-sql') return rawSql(ledger, (input as { text: string }).text)
      return callOperation(operation, input, { ...context, now: () => at }, { progress: () => undefined, signal: new AbortController().signal })
    },
  }
}

/** What somebody does to the file who goes around the program. */
function rawSql(ledger: string, text: string): Answer {
  const db = new DatabaseSync(ledger)
  db.exec(text)
  db.close()
  return { result: {} }
}

/** One ledger with the sample terminal and no month, copied for every bench. */
async function sampleTerminal(): Promise<string> {
  const ledger = join(folder, 'template.sqlite')
  const context = await openContext(ledger, () => undefined)
  const answer = await benchOn(context).call('import-terminal', { files: sampleFiles(), by: 'set-up', passphrase: PASSPHRASE, withMonth: false })
  if (!('result' in answer)) throw new Error(JSON.stringify(answer).slice(0, 2000))
  await context.store?.close()
  return ledger
}

function sampleFiles(): Record<string, string> {
  const samples = join(ROOT, 'samples')
  const files = readdirSync(samples, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile())
  return Object.fromEntries(files.map((entry) => join(entry.parentPath, entry.name)).map((path) => [relative(samples, path).replaceAll('\\', '/'), readFileSync(path, 'utf8')]))
}
