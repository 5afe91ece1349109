import { describe, expect, it } from 'vitest'
import { CallCancelled, RefusedByMain, type Bridge } from '../../../renderer/bridge/bridge.ts'
import { leaveFor } from '../../../renderer/bridge/desk.ts'
import { prepare } from '../../../renderer/bridge/prepare.ts'
import { waitingBridge } from '../../../renderer/desk/locked-bridge.ts'
import { operationsByRole } from '../../../renderer/people/RoleTable.tsx'
import { personComplete, personForm, personInput, personNamed, withRole } from '../../../renderer/people/person-form.ts'
import { aDesk } from '../a-desk.ts'

describe('what may be done at a desk', () => {
  it('is everything where nobody is on record', () => {
    expect(leaveFor(undefined, 'set-tank')).toEqual({ may: true, why: '', prepares: false })
    expect(leaveFor(aDesk([], { peopleOnRecord: false, session: null }), 'set-tank').may).toBe(true)
  })

  it('is what the roles of whoever is at it allow, and says for whom the rest is', () => {
    expect(leaveFor(aDesk(['accountant']), 'void-ticket')).toEqual({ may: true, why: '', prepares: false })
    expect(leaveFor(aDesk(['accountant']), 'set-tank')).toEqual({ may: false, why: 'Only for administrator.', prepares: false })
    expect(leaveFor(aDesk([]), 'terminal').why).toBe('Needs a role at this terminal.')
  })

  it('is prepared where two people are needed', () => {
    const two = aDesk(['accountant'], { rules: { approval: 'two-people', idleMinutes: 15 } })
    expect(leaveFor(two, 'void-ticket').prepares).toBe(true)
    expect(leaveFor(two, 'post-ticket').prepares).toBe(false)
  })
})

const refusedFor = (code: string, path = ''): RefusedByMain => new RefusedByMain([{ code, path, value: '', limit: '', clause: 'HOUSE', message: `${path} is wrong` }])

/** A bridge that answers in turn: throws what is an error, gives back the rest. */
function answering(answers: readonly unknown[]): Bridge & { readonly calls: string[] } {
  const calls: string[] = []
  const left = [...answers]
  const call = async (name: string): Promise<never> => {
    calls.push(name)
    const next = left.shift()
    if (next instanceof Error) throw next
    return next as never
  }
  return { calls, call }
}

describe('a call at a locked desk', () => {
  it('is made again when the desk is open', async () => {
    const bridge = answering([refusedFor('session-locked'), refusedFor('session-locked'), { savedAt: 'now' }])
    const through = waitingBridge(bridge, { opened: () => Promise.resolve(), left: () => undefined })
    expect(await through.call('discard-draft', { id: 'a' })).toEqual({ savedAt: 'now' })
    expect(bridge.calls).toHaveLength(3)
  })

  it('is given up when somebody else sits down, or when the page gives it up', async () => {
    const elsewhere = waitingBridge(answering([refusedFor('session-locked')]), { opened: () => Promise.reject(new Error('somebody else')), left: () => undefined })
    await expect(elsewhere.call('terminal', {})).rejects.toThrow('somebody else')
    const abort = new AbortController()
    const waits = waitingBridge(answering([refusedFor('session-locked')]), { opened: () => new Promise(() => undefined), left: () => undefined }).call('terminal', {}, { signal: abort.signal })
    abort.abort()
    await expect(waits).rejects.toThrow(CallCancelled)
  })

  it('tells when nobody is signed in, and leaves every other refusal alone', async () => {
    let left = 0
    const door = { opened: () => Promise.resolve(), left: () => { left += 1 } }
    await expect(waitingBridge(answering([refusedFor('session-needed')]), door).call('terminal', {})).rejects.toThrow(RefusedByMain)
    await expect(waitingBridge(answering([refusedFor('unknown-tank')]), door).call('terminal', {})).rejects.toThrow(RefusedByMain)
    expect(left).toBe(1)
  })
})

describe('what is prepared in the window', () => {
  it('is refused at its own fields', async () => {
    const error = await prepare(answering([refusedFor('unknown-tank', 'input.tank')]), 'void-ticket', { number: '', reason: '' }, new AbortController().signal).catch((thrown: unknown) => thrown)
    expect(error).toMatchObject({ findings: [{ path: 'tank', message: 'tank is wrong' }] })
  })
})

describe('the sheet of a person', () => {
  it('suggests the id, and makes the first one an administrator', () => {
    const form = personNamed(personForm(undefined, true), 'Ada Brandt')
    expect(form).toMatchObject({ id: 'ada-brandt', roles: ['administrator'] })
    expect(personComplete({ ...form, party: 'CPT' }, true)).toBe(false)
    expect(personComplete({ ...form, party: 'CPT', passphrase: 'seven herons', again: 'seven heron' }, false)).toBe(false)
    expect(personComplete({ ...form, party: 'CPT', passphrase: 'seven herons', again: 'seven herons' }, true)).toBe(true)
  })

  it('keeps the roles in the order of the table, and the signing identity of whoever has one', () => {
    const known = { id: 'mara-teague', name: 'Mara Teague', party: 'CPT', roles: ['administrator' as const], active: true, identity: 'mara-teague', hasPassphrase: true, seq: 3, since: '' }
    const form = withRole(withRole(personForm(known, false), 'accountant', true), 'analyst', true)
    expect(personInput(withRole(form, 'analyst', false), known)).toEqual({ person: { id: 'mara-teague', name: 'Mara Teague', party: 'CPT', roles: ['accountant', 'administrator'], active: true, identity: 'mara-teague' } })
  })
})

describe('the table of roles', () => {
  it('lists what not everybody may do, and nothing else', () => {
    const names = operationsByRole().map(({ name }) => name)
    expect(names).toContain('post-adjustment')
    expect(names).not.toContain('list-tickets')
  })
})
