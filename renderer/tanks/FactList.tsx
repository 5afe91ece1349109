import type { ReactNode } from 'react'
import type { Fact } from './facts.ts'

/** Facts in two columns. */
export function FactList({ facts }: { readonly facts: readonly Fact[] }): ReactNode {
  return <dl className="yard-facts">{facts.map(([name, value]) => <div key={name}><dt>{name}</dt><dd>{value}</dd></div>)}</dl>
}
