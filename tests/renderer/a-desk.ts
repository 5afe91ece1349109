import type { DeskNow } from '../../renderer/bridge/desk.ts'
import type { Role } from '../../main/operations/contracts/index.ts'

/** A desk as the window is told of it, with somebody of these roles at it. */
export function aDesk(roles: readonly Role[], parts: Partial<DeskNow> = {}): DeskNow {
  return {
    station: 'quay-desk', terminal: 'Calder Point Terminal', peopleOnRecord: true, rules: { approval: 'one-person', idleMinutes: 15 },
    people: [{ id: 'mara-teague', name: 'Mara Teague', party: 'CPT', hasPassphrase: true }, { id: 'noor-halden', name: 'Noor Halden', party: 'CPT', hasPassphrase: false }],
    session: { person: { id: 'mara-teague', name: 'Mara Teague', party: 'CPT', roles: [...roles] }, openedAt: '2026-03-15T08:00:00.000Z', locked: false, locksAt: '2026-03-15T08:15:00.000Z' },
    ...parts,
  }
}
