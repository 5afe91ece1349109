import type { ReactNode } from 'react'
import type { OutputOf } from '../../main/operations/contracts/index.ts'
import { useZone } from '../app/TerminalContext.tsx'
import { DenseTable } from '../parts/DenseTable.tsx'
import { localTime, withLocalTimes } from '../parts/local-time.ts'
import { words } from '../words/en.ts'
import { fieldInWords } from './body-rows.ts'
import { EntryLink } from './EntryLink.tsx'

type Read = OutputOf<'read-entry'>
type Changed = NonNullable<Read['changed']>
type Change = Changed['fields'][number]

/** What an entry changed in the set-up: field, what stood, what stands; and the way to the entry before. */
export function EntryChanges({ changed: { since, fields } }: { readonly changed: Changed }): ReactNode {
  const t = words.ledger.changes
  if (since === null) return <><h3>{t.title}</h3><p className="quiet">{t.first}</p></>
  return (
    <>
      <h3>{t.title}</h3>
      <p className="quiet">{t.against} <EntryPlace place={since} /></p>
      <DenseTable<Change>
        label={t.title} rows={fields} rowKey={({ path }) => path} empty={t.none}
        columns={[
          { key: 'field', head: t.field, wrap: true, cell: ({ path, rows }) => <>{fieldInWords(path)}{rows && <span className="quiet"> {t.rows(rows)}</span>}</> },
          { key: 'before', head: t.before, wrap: true, cell: ({ before }) => <Stored text={before} /> },
          { key: 'after', head: t.after, wrap: true, cell: ({ after }) => <Stored text={after} /> },
        ]}
      />
    </>
  )
}

/** An entry by its number, when and by whom; leads there. */
export function EntryPlace({ place: { seq, at, by } }: { readonly place: NonNullable<Read['corrects']> }): ReactNode {
  const t = words.ledger.changes
  const zone = useZone()
  return <><EntryLink seq={seq}>{t.entry(seq)}</EntryLink>{t.placed(localTime(at.replace(/\.\d+Z$/, 'Z'), zone), by)}</>
}

/** As it is stored, but instants by the clock of the terminal, as everywhere in the window. */
function Stored({ text }: { readonly text: string | null }): ReactNode {
  const zone = useZone()
  return text === null ? <span className="quiet">{words.ledger.changes.nothing}</span> : <span className="entry-stored">{withLocalTimes(text, zone)}</span>
}
