import { readdir, readFile } from 'node:fs/promises'
import { join, relative, sep } from 'node:path'
import { callOperation } from '../operations/call-operation.ts'
import type { Context } from '../operations/context.ts'
import type { Progress } from '../operations/contracts/index.ts'

const TEXT = /\.(csv|json|md|txt)$/

/** Every text file below a folder: path within it, with slashes, to its text. */
export async function filesBelow(folder: string): Promise<Readonly<Record<string, string>>> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true })
  const paths = entries.filter((entry) => entry.isFile() && TEXT.test(entry.name)).map((entry) => join(entry.parentPath, entry.name)).toSorted()
  const files = await Promise.all(paths.map(async (path) => [relative(folder, path).split(sep).join('/'), await readFile(path, 'utf8')] as const))
  return Object.fromEntries(files)
}

/** Puts the sample terminal and its month into an empty ledger; says so, and how far it is. */
export async function fillFromSamples(context: Context, folder: string, say: (line: string) => void): Promise<void> {
  say('The ledger is empty: entering the sample terminal and its month.')
  const files = await filesBelow(folder)
  const answer = await callOperation('import-terminal', { files, by: 'sample data', passphrase: passphraseIn(files), withMonth: true }, context, {
    progress: everyTenth(say), signal: new AbortController().signal,
  })
  if ('result' in answer) return say(`Entered ${answer.result.entries} entries, ${answer.result.tickets} of them tickets.`)
  if ('refused' in answer) throw new Error(`The samples were refused:\n${answer.refused.findings.map((finding) => finding.message).join('\n')}`)
  throw new Error(answer.fault.message)
}

/** The samples say in their README which passphrase opens their invented people's keys. */
export function passphraseIn(files: Readonly<Record<string, string>>): string {
  const found = /passphrase[^`]*`([^`]+)`/i.exec(files['README.md'] ?? '')?.[1]
  if (found === undefined) throw new Error('The README of the samples names no passphrase.')
  return found
}

function everyTenth(say: (line: string) => void): (step: Progress) => void {
  let next = 0
  return ({ done, of, what }) => {
    if (of > 0 && done / of < next) return
    next = of > 0 ? done / of + 0.1 : 0
    say(`  ${done} of ${of}  ${what}`)
  }
}
