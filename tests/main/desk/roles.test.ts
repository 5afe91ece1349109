import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { z } from 'zod'
import { Refused } from '../../../core/refusal/index.ts'
import { callOperation } from '../../../main/operations/call-operation.ts'
import type { Handlers } from '../../../main/operations/context.ts'
import { OPERATION_NAMES, OPERATIONS, ROLES, type Contract, type OperationName } from '../../../main/operations/contracts/index.ts'
import { HANDLERS } from '../../../main/operations/table.ts'
import { PEOPLE, putOnRecord, refusedFor, signIn } from '../../support/desk.ts'
import { aWorld, type World } from '../../support/world.ts'

type Terms = Contract<string, z.ZodType, z.ZodType>
const termsOf = (name: OperationName): Terms => OPERATIONS[name]

const REACHED = 'value-not-used'
const reached = (): Promise<never> => Promise.reject(new Refused([{ code: REACHED, path: '', value: '', limit: '', clause: 'HOUSE test' }]))
/** Handlers that do nothing: what is looked at is whether they are reached. */
const NOTHING_DONE = Object.fromEntries(Object.keys(HANDLERS).map((name) => [name, reached])) as unknown as Handlers

let world: World
beforeAll(async () => {
  world = await aWorld()
  await world.ask('set-terminal', { terminal: { code: 'CPT', name: 'Calder Point Terminal', zone: 'Europe/Lisbon', gaugeHour: '06:00' }, by: 'set-up' })
  await world.ask('set-party', { party: { code: 'CPT', name: 'Calder Point Terminal' }, by: 'set-up' })
  await putOnRecord(world)
})
afterAll(() => world.close())

/** Whether a call gets past the door: what it says of its empty input, or of itself, is said inside. */
async function admitted(name: OperationName): Promise<readonly string[]> {
  const answer = await callOperation(name, {}, world.context, { progress: () => undefined, signal: new AbortController().signal }, NOTHING_DONE)
  const codes = refusedFor(answer)
  return codes.every((code) => code === REACHED || code === 'malformed-input') ? [] : codes
}

const pure = ({ ledger, roles }: Terms): boolean => ledger === 'none' && ROLES.every((role) => roles.includes(role))

describe.each(ROLES)('an %s', (role) => {
  beforeAll(() => signIn(world, role))

  it.each(OPERATION_NAMES)('%s: as the table of operations says', async (name) => {
    const terms = termsOf(name)
    const may = terms.roles.includes(role) || terms.nobody === true || pure(terms)
    expect(await admitted(name)).toEqual(may ? [] : ['not-permitted'])
  })
})

describe('nobody at the desk', () => {
  beforeAll(() => world.ask('close-session', {}))

  it.each(OPERATION_NAMES)('%s: only what is computed alone, signing in, and the check of the ledger', async (name) => {
    const terms = termsOf(name)
    expect(await admitted(name)).toEqual(terms.nobody === true || pure(terms) ? [] : ['session-needed'])
  })

  it('what may be called so writes nothing but who comes and goes', () => {
    expect(OPERATION_NAMES.filter((name) => termsOf(name).nobody === true).toSorted()).toEqual(['close-session', 'desk', 'lock-desk', 'open-session', 'verify-documents', 'verify-ledger'])
  })
})

describe('somebody without a role', () => {
  it('may sign in and out, and nothing that the table gives to a role', async () => {
    await signIn(world, 'administrator')
    await world.ask('set-person', { person: { ...PEOPLE.analyst, party: 'CPT', roles: [], active: true } })
    await signIn(world, 'analyst')
    expect(await admitted('terminal')).toEqual(['not-permitted'])
    expect(await admitted('desk')).toEqual([])
  })

  it('who is no longer active is at no desk, though the session was open', async () => {
    await world.ask('open-session', { person: PEOPLE.accountant.id, passphrase: 'seven herons over the weir' })
    expect(await admitted('terminal')).toEqual([])
    const other = { ...world.context, desk: { ...world.context.desk, session: { person: PEOPLE.administrator.id, openedAt: world.context.now(), activeAt: world.context.now(), locked: false } } }
    const left = { person: { ...PEOPLE.accountant, party: 'CPT', roles: ['accountant'], active: false } }
    expect(await callOperation('set-person', left, other, { progress: () => undefined, signal: new AbortController().signal })).toHaveProperty('result')
    expect(await admitted('terminal')).toEqual(['session-needed'])
    expect((await world.ask('desk', {})).session).toBeNull()
  })
})

describe('the table of operations', () => {
  it('gives every operation to somebody', () => {
    expect(OPERATION_NAMES.filter((name) => termsOf(name).roles.length === 0)).toEqual([])
  })

  it('lets whoever sets up the ledger not move its book', () => {
    const movesTheBook = ['post-ticket', 'void-ticket', 'post-adjustment', 'record-inventory', 'post-stock-movement', 'void-stock-movement'] as const
    expect(movesTheBook.filter((name) => termsOf(name).roles.includes('administrator'))).toEqual([])
  })

  it('gives the voiding of a stock movement to those who may void a ticket, and to a second person as that', () => {
    const [ticket, movement] = [termsOf('void-ticket'), termsOf('void-stock-movement')]
    expect([movement.roles, movement.approval]).toEqual([ticket.roles, ticket.approval])
  })

  it('marks nothing for approval that cannot be prepared without a passphrase: what is prepared is kept', () => {
    const needing = OPERATION_NAMES.filter((name) => {
      const { approval, input } = termsOf(name)
      if (approval !== true || !(input instanceof z.ZodObject)) return approval === true
      const { passphrase, ...rest } = input.shape as Record<string, z.ZodType>
      return (passphrase !== undefined && !passphrase.safeParse(undefined).success) || /passphrase/i.test(JSON.stringify(z.toJSONSchema(z.object(rest), { io: 'input' })))
    })
    expect(needing).toEqual([])
  })

  it('takes who enters something as what may be left out', () => {
    const insisting = OPERATION_NAMES.filter((name) => {
      const { input } = termsOf(name)
      return input instanceof z.ZodObject && 'by' in input.shape && !(input.shape['by'] as z.ZodType).safeParse(undefined).success
    })
    expect(insisting).toEqual([])
  })
})
