import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { OPERATION_NAMES } from '../../../main/operations/contracts/index.ts'
import { runCommandLine, type Surroundings } from '../../../main/shells/command-line/command-line.ts'
import { commandLine, startCommandLine } from '../../support/programs.ts'
import { aReceipt } from '../../support/tickets.ts'
import { aTerminalLedger, aWorld } from '../../support/world.ts'

let template: Awaited<ReturnType<typeof aTerminalLedger>>
let folder: string
/** A signed ticket as a file. */
let ticket: string
let ledger: string
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'dipledger-command-line-'))
  template = await aTerminalLedger()
  const world = await aWorld({ copyOf: template.path })
  await world.ask('post-ticket', aReceipt())
  const { file } = await world.ask('ticket-document', { number: 'CPT-000001' })
  ticket = join(folder, 'CPT-000001.pdf')
  writeFileSync(ticket, Buffer.from(file, 'base64'))
  await world.context.store?.close()
  ledger = world.ledger
})
afterAll(async () => {
  await template.remove()
  rmSync(folder, { recursive: true, force: true })
})

/** Runs in this process, as if at a terminal or not. */
async function run(args: readonly string[], around: Partial<Surroundings> = {}): Promise<{ readonly code: number; readonly out: string; readonly error: string }> {
  const out: string[] = []
  const error: string[] = []
  const code = await runCommandLine(args, {
    environment: {}, standardInput: async () => '', askPassphrase: async () => undefined, isTerminal: true, errorIsTerminal: false, signal: new AbortController().signal,
    write: (text) => { out.push(text) }, writeError: (text) => { error.push(text) }, ...around,
  })
  return { code, out: out.join(''), error: error.join('') }
}

function findingsIn(error: string): readonly { readonly code: string; readonly path: string; readonly message: string; readonly value: string }[] {
  return JSON.parse(error).error.findings
}

describe('npx dipledger help', () => {
  it('is the table, a line each, and what it is without arguments', async () => {
    const { code, out } = await run(['help'])
    expect(code).toBe(0)
    for (const name of OPERATION_NAMES) expect(out).toMatch(new RegExp(`^  ${name} +\\S.*$`, 'm'))
    expect((await run([])).out).toBe(out)
    expect((await run(['--help'])).out).toBe(out)
  })
})

describe('npx dipledger schema', () => {
  it.each(OPERATION_NAMES)('%s says what goes in and what comes out', async (name) => {
    const { code, out } = await run(['schema', name])
    expect(code).toBe(0)
    // an input of several kinds is one of several objects
    const anObject = expect.objectContaining({ type: 'object' })
    const { input, ...rest } = JSON.parse(out)
    expect(rest).toMatchObject({ name, output: { type: 'object' } })
    for (const form of input.oneOf ?? [input]) expect(form).toEqual(anObject)
  })

  it('of nothing known is refused', async () => {
    expect(findingsIn((await run(['schema', 'tea'])).error)).toMatchObject([{ code: 'unknown-operation', value: 'tea' }])
    expect((await run(['schema'])).code).toBe(2)
  })
})

describe('the exit code', () => {
  it('0: done', async () => {
    expect(await run(['about'])).toMatchObject({ code: 0, error: '' })
  })

  it('2: refused, with every finding on standard error and nothing on standard output', async () => {
    const { code, out, error } = await run(['volume-correction', '-'], { standardInput: async () => '{"commodity":"beer"}' })
    expect({ code, out }).toEqual({ code: 2, out: '' })
    const findings = findingsIn(error)
    expect(findings.map((finding) => finding.path)).toEqual(['commodity', 'baseTemperature', 'temperature'])
    for (const finding of findings) expect(Object.keys(finding)).toEqual(['code', 'message', 'path', 'value', 'limit', 'clause'])
  })

  it('1: a fault, as with a file that is no ledger', async () => {
    const broken = join(folder, 'broken.db')
    writeFileSync(broken, 'this is no ledger '.repeat(500))
    const { code, error } = await run(['terminal', '--ledger', broken])
    expect(code).toBe(1)
    expect(JSON.parse(error)).toMatchObject({ error: { fault: expect.stringContaining('cannot be opened') } })
  })
})

describe('the input', () => {
  it('that is not there is asked for, instead of waiting for a person to type JSON', async () => {
    const { code, error } = await run(['volume-correction'])
    expect(code).toBe(2)
    expect(findingsIn(error)).toMatchObject([{ code: 'missing-value', path: 'input', message: expect.stringContaining('npx dipledger volume-correction input.json') }])
  })

  it.each([
    ['a path that leads nowhere', ['volume-correction', '/nowhere/at/all.json'], 'missing-value'],
    ['an option that is none', ['about', '--colour', 'red'], 'malformed-input'],
    ['too many words', ['volume-correction', 'a.json', 'b.json', 'c.json'], 'malformed-input'],
    ['a second input where one is taken', ['volume-correction', 'a.json', 'b.json'], 'malformed-input'],
  ])('refuses %s', async (_what, args, code) => {
    const ran = await run(args)
    expect(ran.code).toBe(2)
    expect(findingsIn(ran.error)[0]?.code).toBe(code)
  })

  it('that is no JSON is refused', async () => {
    expect(findingsIn((await run(['about', '-'], { standardInput: async () => '{"half":' })).error)).toMatchObject([{ code: 'malformed-input', value: '{"half":' }])
  })
})

describe('a ledger', () => {
  it('is named by --ledger or by the surroundings', async () => {
    expect(JSON.parse((await run(['list-tickets', '--ledger', ledger])).out)).toMatchObject({ tickets: [{ number: 'CPT-000001' }] })
    expect(JSON.parse((await run(['list-tickets'], { environment: { DIPLEDGER_LEDGER: ledger } })).out)).toMatchObject({ tickets: [{ number: 'CPT-000001' }] })
  })

  it('that is needed and not named, or not there, is asked for and not made', async () => {
    expect(findingsIn((await run(['list-tickets'])).error)).toMatchObject([{ code: 'missing-value', path: 'ledger' }])
    const nowhere = join(folder, 'nowhere.db')
    expect(findingsIn((await run(['list-tickets', '--ledger', nowhere])).error)).toMatchObject([{ code: 'missing-value', path: 'ledger', value: nowhere }])
    expect(existsSync(nowhere)).toBe(false)
  })

  it('is made by an operation that writes', async () => {
    const made = join(folder, 'made.db')
    const party = JSON.stringify({ party: { code: 'NORTHSHORE', name: 'North Shore Supply' }, by: 'M. Duarte' })
    expect((await run(['set-party', '-', '--ledger', made], { standardInput: async () => party })).code).toBe(0)
    expect(JSON.parse((await run(['terminal', '--ledger', made])).out).parties).toHaveLength(1)
  })
})

describe('npx dipledger verify-document', () => {
  it('exits 0 on a signed ticket, with a ledger or without', async () => {
    expect(await run(['verify-document', ticket])).toMatchObject({ code: 0, error: '' })
    expect(await run(['verify-document', ticket, '--ledger', ledger])).toMatchObject({ code: 0 })
  })

  it('exits 2 on one flipped byte, with the report or the finding', async () => {
    const { readFileSync } = await import('node:fs')
    const bytes = readFileSync(ticket)
    const altered = join(folder, 'altered.pdf')
    for (const place of [700, bytes.length >> 1, bytes.length - 400]) {
      const copy = Buffer.from(bytes)
      copy.writeUInt8((copy[place] ?? 0) ^ 1, place)
      writeFileSync(altered, copy)
      expect({ place, code: (await run(['verify-document', altered])).code }).toEqual({ place, code: 2 })
    }
  })
})

describe('progress', () => {
  it('is for a person at a terminal, or as JSON lines when asked for; else standard error holds findings alone', async () => {
    expect((await run(['verify-ledger', '--ledger', ledger])).error).toBe('')
    expect((await run(['verify-ledger', '--ledger', ledger], { errorIsTerminal: true })).error).toMatch(/^\d+ of \d+ {2}\S/)
    const lines = (await run(['verify-ledger', '--ledger', ledger, '--progress'])).error.trimEnd().split('\n')
    for (const line of lines) expect(JSON.parse(line)).toEqual({ progress: { done: expect.any(Number), of: expect.any(Number), what: expect.any(String) } })
  })
})

describe('a call that is cancelled', () => {
  it('ends with a fault that says so', async () => {
    const { code, error } = await run(['about'], { signal: AbortSignal.abort() })
    expect({ code, error: JSON.parse(error) }).toEqual({ code: 1, error: { error: { fault: 'cancelled' } } })
  })

  it('while it waits for input ends the same', async () => {
    const abort = new AbortController()
    const standardInput = () => new Promise<string>((_resolve, reject) => { abort.signal.addEventListener('abort', () => reject(new Error('gone'))) })
    const running = run(['volume-correction', '-'], { signal: abort.signal, standardInput })
    abort.abort()
    expect((await running).code).toBe(1)
  })
})

describe('as a program of its own', () => {
  it('reads standard input, writes standard output and sets the exit code', async () => {
    const input = JSON.stringify({ commodity: 'crude', density: { value: '31.4 degAPI' }, baseTemperature: '60 degF', temperature: '88.3 degF' })
    const { code, out, error } = await commandLine(['volume-correction'], input)
    expect({ code, error }).toEqual({ code: 0, error: '' })
    expect(JSON.parse(out)).toMatchObject({ ctl: '0.98713' })
    expect(await commandLine(['volume-correction'], '')).toMatchObject({ code: 2, out: '' })
  })

  it('ends when it is interrupted while it waits for input', async () => {
    const child = startCommandLine(['volume-correction', '-'])
    const ended = new Promise<unknown>((resolve) => child.on('close', (code, signal) => resolve(code ?? signal)))
    // before it listens, an interrupt ends it outright; after that the first one cancels
    const again = setInterval(() => child.kill('SIGINT'), 1_000)
    const how = await ended
    clearInterval(again)
    expect([1, 'SIGINT']).toContain(how)
  })
})
