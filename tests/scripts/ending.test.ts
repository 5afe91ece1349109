import { spawn, type ChildProcess } from 'node:child_process'
import { once } from 'node:events'
import { createServer } from 'node:net'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createInterface } from 'node:readline'
import { describe, expect, it } from 'vitest'
import { ROOT } from '../support/programs.ts'

const PROGRAM = `"${process.execPath}" "${join(ROOT, 'tests/support/ends-with-npm.ts')}"`
const byNpm = { ...process.env, npm_lifecycle_event: 'start' }
const isThere = (pid: number): boolean => { try { return process.kill(pid, 0) } catch { return false } }
/** A shell that waits for its command; the last `true` keeps it from becoming the command. */
const shell = (command: string, env: NodeJS.ProcessEnv): ChildProcess => spawn('sh', ['-c', `${command}; true`], { cwd: ROOT, env, stdio: ['ignore', 'pipe', 'inherit'] })

async function pidFrom({ stdout }: ChildProcess): Promise<number> {
  if (stdout === null) throw new Error('the shell has no output')
  const [line] = await once(createInterface({ input: stdout }), 'line')
  return Number(line)
}

describe.skipIf(process.platform === 'win32')('a program that npm started', () => {
  it.each([
    ['the shell between them is ended', PROGRAM, 'SIGTERM'],
    ['npm is killed and the shell stays', `sh -c '${PROGRAM}; true'`, 'SIGKILL'],
  ] as const)('ends when %s', async (_says, command, signal) => {
    const parent = shell(command, byNpm)
    const pid = await pidFrom(parent)
    expect(isThere(pid)).toBe(true)
    parent.kill(signal)
    await expect.poll(() => isThere(pid), { timeout: 10_000 }).toBe(false)
  })

  it('and not by npm is left alone', async () => {
    const { npm_lifecycle_event: _, ...own } = byNpm
    const parent = shell(PROGRAM, own)
    const pid = await pidFrom(parent)
    parent.kill('SIGTERM')
    await once(parent, 'exit')
    await new Promise((resolve) => { setTimeout(resolve, 400) })
    expect(isThere(pid)).toBe(true)
    process.kill(pid, 'SIGKILL')
  })
})

it('a script that is ended ends what it runs', async () => {
  const script = `import { run } from './scripts/run.ts'; await run(process.execPath, ['-e', 'console.log(process.pid); setInterval(() => undefined, 60000)'])`
  const child = spawn(process.execPath, ['--input-type=module', '-e', script], { cwd: ROOT, stdio: ['ignore', 'pipe', 'inherit'] })
  const pid = await pidFrom(child)
  child.kill('SIGTERM')
  expect(await once(child, 'exit')).toEqual([143, null])
  expect(isThere(pid)).toBe(false)
})

it('a port that is taken is said in one line, before a ledger is opened', async () => {
  const other = createServer().listen(0, '127.0.0.1')
  await once(other, 'listening')
  const address = other.address()
  const port = typeof address === 'object' && address !== null ? address.port : 0
  const folder = mkdtempSync(join(tmpdir(), 'dipledger-port-'))
  try {
    const script = `import { startLoopback } from './main/shells/loopback/start.ts'; await startLoopback(['--no-browser', '--port', '${port}', '--folder', ${JSON.stringify(join(folder, 'ledger'))}])`
    const child = spawn(process.execPath, ['--input-type=module', '-e', script], { cwd: ROOT, stdio: ['ignore', 'pipe', 'pipe'] })
    const [out, err] = await Promise.all([child.stdout, child.stderr].map(async (stream) => (await stream.toArray()).join('')))
    expect(out).toBe('')
    expect(err).toBe(`Port ${port} is already taken, perhaps by this program in another window: end what holds it, or leave --port out and take any that is free.\n`)
    expect(child.exitCode ?? (await once(child, 'exit'))[0]).toBe(1)
  } finally {
    other.close()
    rmSync(folder, { recursive: true, force: true })
  }
})
