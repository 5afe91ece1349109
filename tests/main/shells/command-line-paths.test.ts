import { existsSync, writeFileSync } from 'node:fs'
import { join, relative } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { runCommandLine } from '../../../main/shells/command-line/command-line.ts'
import { aFolder } from '../../support/ledgers.ts'
import { aTerminalLedger } from '../../support/world.ts'

const folder = aFolder()
let ledger: Awaited<ReturnType<typeof aTerminalLedger>>
beforeAll(async () => { ledger = await aTerminalLedger() }, 60_000)
afterAll(async () => {
  folder.remove()
  await ledger.remove()
})

/** Runs an operation with a JSON file as its input. */
async function run(operation: string, input: unknown, ...args: readonly string[]): Promise<{ readonly code: number; readonly out: Readonly<Record<string, unknown>> }> {
  const json = join(folder.path, 'input.json')
  writeFileSync(json, JSON.stringify(input))
  const out: string[] = []
  const code = await runCommandLine([operation, json, ...args], {
    environment: {}, standardInput: async () => '', askPassphrase: async () => undefined, isTerminal: true, errorIsTerminal: false, signal: new AbortController().signal,
    write: (text) => { out.push(text) }, writeError: (text) => { out.push(text) },
  })
  return { code, out: JSON.parse(out.join('')) }
}

describe('paths on the command line', () => {
  it('are those of where it runs: out to lines and back, to a backup and back', async () => {
    const here = (name: string): string => relative(process.cwd(), join(folder.path, name))
    const exported = await run('export-ledger', { to: here('all.jsonl') }, '--ledger', ledger.path)
    expect(exported).toMatchObject({ code: 0, out: { path: join(folder.path, 'all.jsonl'), entries: 8 } })
    expect(await run('import-ledger', { from: here('all.jsonl'), to: here('imported/ledger.db') })).toMatchObject({ code: 0, out: { head: exported.out['head'], entries: 8 } })
    const backup = await run('backup-now', { folder: here('.') }, '--ledger', ledger.path)
    expect(backup).toMatchObject({ code: 0, out: { head: exported.out['head'] } })
    expect(await run('restore-backup', { backup: backup.out['path'], to: here('restored/ledger.db') })).toMatchObject({ code: 0, out: { head: exported.out['head'] } })
    expect(existsSync(join(folder.path, 'restored/ledger.db'))).toBe(true)
  })

  it('are refused with exit code 2 where something is already', async () => {
    writeFileSync(join(folder.path, 'there'), '')
    expect(await run('export-ledger', { to: join(folder.path, 'there') }, '--ledger', ledger.path)).toMatchObject({ code: 2, out: { error: { findings: [{ code: 'path-taken' }] } } })
  })
})
