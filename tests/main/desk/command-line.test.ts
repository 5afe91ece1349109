import { EventEmitter } from 'node:events'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { hostname } from 'node:os'
import { runCommandLine, type Surroundings } from '../../../main/shells/command-line/command-line.ts'
import { askWithoutEcho } from '../../../main/shells/command-line/passphrase.ts'
import { DESK_PASSPHRASE, putOnRecord } from '../../support/desk.ts'
import { aWorld, type World } from '../../support/world.ts'

let world: World
beforeAll(async () => {
  world = await aWorld()
  await world.ask('set-party', { party: { code: 'CPT', name: 'Calder Point Terminal' }, by: 'set-up' })
  await putOnRecord(world, ['accountant'])
})
afterAll(() => world.close())

async function run(args: readonly string[], { input, ...around }: Partial<Surroundings> & { readonly input?: unknown } = {}) {
  const [out, error]: [string[], string[]] = [[], []]
  const code = await runCommandLine([...args, '--ledger', world.ledger], {
    environment: {}, standardInput: async () => (input === undefined ? '' : JSON.stringify(input)), isTerminal: false, errorIsTerminal: false, signal: new AbortController().signal,
    askPassphrase: async () => undefined, write: (text) => { out.push(text) }, writeError: (text) => { error.push(text) }, ...around,
  })
  return { code, out: out.join(''), error: error.join('') }
}
const party = { party: { code: 'NORTHSHORE', name: 'North Shore Supply' } }
const known = { environment: { DIPLEDGER_PASSPHRASE: DESK_PASSPHRASE } }

describe('the command line on a ledger with people', () => {
  it('asks for a person, save for the check of the ledger', async () => {
    expect(await run(['set-party'], { input: party })).toMatchObject({ code: 2, error: expect.stringContaining('--as PERSON') })
    expect(await run(['verify-ledger'])).toMatchObject({ code: 0 })
  })

  it('takes the passphrase from the environment, and the host name as the station', async () => {
    expect(await run(['set-party', '--as', 'ada-brandt'], { input: party, ...known })).toMatchObject({ code: 0, error: '' })
    expect((await world.context.store?.latestEntries(1))?.[0]).toMatchObject({ kind: 'party-set', by: 'Ada Brandt', origin: { station: hostname(), person: 'ada-brandt' } })
  })

  it('asks for it at a terminal', async () => {
    const asked: string[] = []
    expect(await run(['list-people', '--as', 'ada-brandt'], { askPassphrase: async (question) => { asked.push(question); return DESK_PASSPHRASE } })).toMatchObject({ code: 0 })
    expect(asked).toEqual(['Passphrase of ada-brandt: '])
    expect(await run(['list-people', '--as', 'ada-brandt'])).toMatchObject({ code: 2, error: expect.stringContaining('DIPLEDGER_PASSPHRASE') })
  })

  it('leaves the head as it was when somebody only looks; a wrong passphrase and a refusal are written down', async () => {
    const head = await world.context.store?.head()
    expect(await run(['list-people', '--as', 'mara-teague'], known)).toMatchObject({ code: 0 })
    expect(await world.context.store?.head()).toEqual(head)
    expect(await run(['list-people', '--as', 'mara-teague'], { environment: { DIPLEDGER_PASSPHRASE: 'a wrong one, surely' } })).toMatchObject({ code: 2 })
    expect(await run(['set-party', '--as', 'mara-teague'], { input: party, ...known })).toMatchObject({ code: 2 })
    const last = await world.context.store?.latestEntries(2) ?? []
    expect(last.map(({ body }) => ('event' in body && 'person' in body.event ? body.event.event : ''))).toEqual(['permission-refused', 'passphrase-wrong'])
  })
})

describe('a passphrase typed on a terminal', () => {
  /** A terminal that hears keys and shows nothing itself. */
  function aTerminal() {
    const heard = new EventEmitter()
    const modes: boolean[] = []
    return Object.assign(heard, { modes, setRawMode(raw: boolean) { modes.push(raw); return this }, pause() { return this }, resume() { return this } })
  }

  it('is not shown, is mended by backspace and ends with Enter', async () => {
    const terminal = aTerminal()
    const shown: string[] = []
    const typed = askWithoutEcho(terminal as never, (text) => { shown.push(text) }, 'Passphrase: ')
    for (const keys of ['herox', '\u007f', 'n over', '\r', 'left over']) terminal.emit('data', Buffer.from(keys))
    expect(await typed).toBe('heron over')
    expect(shown.join('')).toBe('Passphrase: \n')
    expect(terminal.modes).toEqual([true, false])
  })

  it('is given up by Ctrl-C', async () => {
    const terminal = aTerminal()
    const typed = askWithoutEcho(terminal as never, () => undefined, '')
    terminal.emit('data', Buffer.from('her\u0003'))
    expect(await typed).toBeUndefined()
  })
})
