import type { ReactNode } from 'react'
import type { CapacityTable } from '../../core/tank/index.ts'
import { Findings } from '../parts/Findings.tsx'
import { words } from '../words/en.ts'

/** What was found odd in a table, each with its line. */
export function Noticed({ table }: { readonly table: CapacityTable }): ReactNode {
  if (table.noticed === undefined || table.noticed.length === 0) return null
  return <section className="table-noticed" aria-label={words.tables.noticed}><h3>{words.tables.noticed}</h3><Findings findings={table.noticed} /></section>
}
