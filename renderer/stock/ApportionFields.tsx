import { useState, type ReactNode } from 'react'
import { useZone } from '../app/TerminalContext.tsx'
import { useAction } from '../bridge/use-operation.ts'
import { Button } from '../parts/Button.tsx'
import { SelectField, TextField } from '../parts/Field.tsx'
import { CallFailed } from '../parts/Findings.tsx'
import { readLocalTime } from '../parts/local-time.ts'
import { words } from '../words/en.ts'
import type { Unshared } from './unshared.ts'
import type { ShareLine } from './share-form.ts'

/** A loss or gain proposed to its owners by what they had or moved; a proposal that may be written over. */
export function ApportionFields({ of, onProposed }: { readonly of: Unshared; readonly onProposed: (shares: readonly ShareLine[]) => void }): ReactNode {
  const t = words.stock.own.panel
  const zone = useZone()
  const [basis, setBasis] = useState<'stock' | 'throughput'>('stock')
  const [typed, setTyped] = useState({ from: '', to: '' })
  const [state, run] = useAction('apportion')
  const [from, to] = [readLocalTime(typed.from, zone), readLocalTime(typed.to, zone)]
  const propose = async (): Promise<void> => {
    if (!from.ok || !to.ok) return
    const found = await run({ tank: of.tank, product: of.product, from: from.instant, to: to.instant, basis, nsv: `${of.nsv.value} ${of.nsv.unit}` })
    if (found) onProposed(found.shares.map(({ party, nsv }) => ({ party, nsv: `${nsv.value} ${nsv.unit}` })))
  }
  return (
    <div>
      <div className="apportion">
        <SelectField id="apportion-basis" label={t.apportion} value={basis} choices={(['stock', 'throughput'] as const).map((value) => ({ value, label: t.basis[value] }))} onChange={(value) => setBasis(value === 'throughput' ? 'throughput' : 'stock')} />
        <TextField id="apportion-from" label={t.from} value={typed.from} placeholder={words.gauge.timeHint} onChange={(value) => setTyped({ ...typed, from: value })} />
        <TextField id="apportion-to" label={t.to} value={typed.to} placeholder={words.gauge.timeHint} onChange={(value) => setTyped({ ...typed, to: value })} />
        <Button disabled={!from.ok || !to.ok} onClick={() => void propose()}>{t.propose}</Button>
      </div>
      {state.state === 'done' && <p className="quiet">{state.value.rule}</p>}
      {state.state === 'failed' && <CallFailed error={state.error} />}
    </div>
  )
}
