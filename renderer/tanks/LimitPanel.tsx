import { useState, type ReactNode } from 'react'
import type { ProductLimit } from '../../core/ledger/index.ts'
import type { Product } from '../../core/quantity/index.ts'
import { THROUGHPUT_BASES } from '../../core/reconciliation/index.ts'
import { FaultInMain, RefusedByMain } from '../bridge/bridge.ts'
import { useAction } from '../bridge/use-operation.ts'
import { usualUnits, withUsualUnit } from '../gauge/usual-units.ts'
import { TextField } from '../parts/Field.tsx'
import { placeFindings } from '../parts/place-findings.ts'
import { SheetPanel } from '../parts/SheetPanel.tsx'
import { words } from '../words/en.ts'
import { EffectiveFields } from './EffectiveFields.tsx'
import { LIMIT_PLACES, limitForm } from './product-form.ts'
import { OneOf } from './OneOf.tsx'
import { useEffective } from './use-effective.ts'

interface LimitPanelProps { readonly product: Product; readonly limit: ProductLimit | undefined; readonly open: boolean; readonly onClose: () => void; readonly onEntered: () => void }

/** The limit on loss and gain of a product, and who set it. */
export function LimitPanel(props: LimitPanelProps): ReactNode {
  return props.open ? <LimitSheet {...props} /> : null
}

function LimitSheet({ product, limit, open, onClose, onEntered }: LimitPanelProps): ReactNode {
  const t = words.yard.limitForm
  const [form, setForm] = useState(() => limitForm(product, limit))
  const effective = useEffective()
  const [state, run] = useAction('set-limit')
  const units = usualUnits(undefined, product)
  const placed = placeFindings(state.state === 'failed' && state.error instanceof RefusedByMain ? state.error.findings : [], LIMIT_PLACES)
  const set = (change: Partial<ProductLimit>): void => setForm((before) => ({ ...before, ...change }))
  const submit = async (): Promise<void> => {
    if (effective.ready && (await run({ limit: form, ...effective.ready }))) onEntered()
  }
  return (
    <SheetPanel
      title={t.title(product.name)} open={open} onClose={onClose} does="set-limit" state={state} submit={words.yard.tankForm.submit} onSubmit={() => void submit()} busy={state.state === 'running'} ready={effective.ready !== undefined && form.percent.trim() !== '' && form.source.trim() !== ''}
      others={placed.others} fault={state.state === 'failed' && state.error instanceof FaultInMain ? state.error : undefined} says={<p>{t.says}</p>}
    >
      <div className="sheet-row">
        <TextField id="limit-percent" label={t.percent} measured value={form.percent} placeholder="0.25 %" onChange={(percent) => set({ percent })} onBlur={() => set({ percent: withUsualUnit(form.percent, 'share', units) })} error={placed.errors.get('limit-percent')} />
        <OneOf id="limit-base" label={t.base} value={form.base} of={THROUGHPUT_BASES} say={(one) => words.yard.bases[one]} onChange={(base) => set({ base })} />
        <TextField id="limit-fixed" label={t.fixed} measured value={form.fixed} onChange={(fixed) => set({ fixed })} onBlur={() => set({ fixed: withUsualUnit(form.fixed, 'volume', units) })} error={placed.errors.get('limit-fixed')} />
      </div>
      <TextField id="limit-source" label={t.source} value={form.source} onChange={(source) => set({ source })} error={placed.errors.get('limit-source')} />
      <EffectiveFields effective={effective} ids={{ from: 'set-from', by: 'set-by' }} errors={placed.errors} />
    </SheetPanel>
  )
}
