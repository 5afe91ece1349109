import { instantKey, type EntryOf, type Person } from '../../../core/ledger/index.ts'
import { accepted, refused, type Outcome } from '../../../core/refusal/index.ts'
import { peopleAt } from './people.ts'

type Set = Pick<EntryOf<'person-set'>, 'seq' | 'kind' | 'body'>

/**
 * Whether somebody who can sign in stays an administrator, now and at every date on which somebody changes later.
 * @param entries as they would stand
 * @param hasPassphrase ids of those who can sign in
 */
export function keepsAnAdministrator(entries: readonly EntryOf<'person-set'>[], hasPassphrase: ReadonlySet<string>, now: string, named: Person): Outcome<null> {
  const later = entries.map(({ body }: Set) => body.effectiveFrom).filter((at) => instantKey(at) > instantKey(now))
  const without = [now, ...later].find((at) => !peopleAt(entries, at).some((one) => one.active && one.roles.includes('administrator') && hasPassphrase.has(one.id)))
  if (without === undefined) return accepted(null)
  return refused({
    code: 'no-administrator', path: 'person.roles', value: `${named.name}${named.active ? standing(named) : ' not active'}`,
    limit: `${without === now ? '' : `from ${without} on `}there must be an active administrator with a passphrase`, clause: 'HOUSE people',
  })
}

function standing({ roles }: Person): string {
  return roles.length === 0 ? ' without a role' : ` as ${roles.join(' and ')}`
}
