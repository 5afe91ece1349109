import type { Role } from '../../core/ledger/index.ts'
import type { Answer } from '../../main/operations/answer.ts'
import type { World } from './world.ts'

/** Passphrase of everybody on record in these tests. */
export const DESK_PASSPHRASE = 'seven herons over the weir'

/** Invented people, by what they do. */
export const PEOPLE = {
  administrator: { id: 'ada-brandt', name: 'Ada Brandt' }, accountant: { id: 'mara-teague', name: 'Mara Teague' },
  inspector: { id: 'lise-fenn', name: 'Lise Fenn' }, analyst: { id: 'noor-halden', name: 'Noor Halden' },
} as const satisfies Readonly<Record<Role, { readonly id: string; readonly name: string }>>

/** Puts people of the given roles on record, the administrator first, and leaves the desk. */
export async function putOnRecord({ ask }: Pick<World, 'ask'>, roles: readonly Role[] = ['administrator', 'accountant', 'inspector', 'analyst']): Promise<void> {
  const enter = (role: Role) => ask('set-person', { person: { ...PEOPLE[role], party: 'CPT', roles: [role], active: true }, effectiveFrom: '2026-01-01T00:00:00Z', passphrase: DESK_PASSPHRASE })
  await enter('administrator')
  await signIn({ ask }, 'administrator')
  for (const role of roles) if (role !== 'administrator') await enter(role)
  await ask('close-session', {})
}

export async function signIn({ ask }: Pick<World, 'ask'>, role: Role): Promise<void> {
  await ask('open-session', { person: PEOPLE[role].id, passphrase: DESK_PASSPHRASE })
}

/** What a call was refused for; empty when it was not. */
export function refusedFor(answer: Answer): readonly string[] {
  return 'refused' in answer ? answer.refused.findings.map(({ code }) => code) : []
}

/** A clock that is set by hand. */
export function aClock(start: string): { readonly now: () => string; readonly pass: (seconds: number) => void; readonly set: (at: string) => void } {
  let ms = Date.parse(start)
  return { now: () => new Date(ms).toISOString(), pass: (seconds) => { ms += seconds * 1000 }, set: (at) => { ms = Date.parse(at) } }
}
