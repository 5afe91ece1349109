import type { ReactNode } from 'react'
import type { StorageFact } from './storage-facts.ts'

/** Facts, a line each; what is wrong stands out and says so in words. */
export function FactLines({ facts, action }: { readonly facts: readonly StorageFact[]; readonly action?: ReactNode }): ReactNode {
  return (
    <div className="storage-facts">
      <dl>{facts.map(({ name, value, wrong, large }) => <div key={name} className={large ? 'storage-large' : undefined}><dt>{name}</dt><dd className={wrong ? 'storage-wrong' : undefined}>{value}</dd></div>)}</dl>
      {action}
    </div>
  )
}
