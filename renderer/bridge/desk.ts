import { createContext, use } from 'react'
import { OPERATIONS, ROLES, type Contract, type OperationName, type OutputOf } from '../../main/operations/contracts/index.ts'
import type { z } from 'zod'
import { words } from '../words/en.ts'

export type DeskNow = OutputOf<'desk'>

/** The desk as it stands, and what is told when an operation changed it. */
export interface DeskHold {
  readonly now: DeskNow
  readonly changed: (now: DeskNow) => void
  /** Covers this window where the other side does not answer; it is locked there as soon as it does. */
  readonly cover: () => void
}

/** Null where the window stands without a desk, as a component alone does: then everything may be done. */
export const DeskContext = createContext<DeskHold | null>(null)

export function useDesk(): DeskHold | null {
  return use(DeskContext)
}

/** Whether an operation may be done here. */
export interface Leave {
  readonly may: boolean
  /** Why not, for people; empty when it may. */
  readonly why: string
  /** It is prepared for somebody else to approve, not done. */
  readonly prepares: boolean
}

const FREE: Leave = { may: true, why: '', prepares: false }

/** Whether whoever is at the desk may do an operation, by the same table that the other side holds it against. */
export function leaveFor(desk: DeskNow | undefined, name: OperationName): Leave {
  if (desk === undefined || !desk.peopleOnRecord) return FREE
  const { roles, approval }: Pick<Contract<string, z.ZodType, z.ZodType>, 'roles' | 'approval'> = OPERATIONS[name]
  const has = desk.session?.person.roles ?? []
  if (!roles.some((role) => has.includes(role))) return { may: false, why: words.desk.onlyFor(roles.length === ROLES.length ? [] : roles), prepares: false }
  return { ...FREE, prepares: approval === true && desk.rules.approval === 'two-people' }
}

/** {@link leaveFor} at this desk; without a name everything may be done. */
export function useLeave(name: OperationName | undefined): Leave {
  const desk = useDesk()
  return name === undefined ? FREE : leaveFor(desk?.now, name)
}
