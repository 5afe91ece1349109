import { useState, type ReactNode } from 'react'
import type { Product } from '../../core/quantity/index.ts'
import { MASS_UNITS, VOLUME_UNITS } from '../../core/units/index.ts'
import { BASE_TEMPERATURES, COMMODITIES, EDITIONS } from '../../core/volume-correction/index.ts'
import { FaultInMain, RefusedByMain } from '../bridge/bridge.ts'
import { useAction } from '../bridge/use-operation.ts'
import { TextField } from '../parts/Field.tsx'
import { placeFindings } from '../parts/place-findings.ts'
import { SheetPanel } from '../parts/SheetPanel.tsx'
import { words } from '../words/en.ts'
import { EffectiveFields } from './EffectiveFields.tsx'
import { OneOf } from './OneOf.tsx'
import { PRODUCT_PLACES, productForm, productOf, type ProductForm } from './product-form.ts'
import { useEffective } from './use-effective.ts'

interface ProductPanelProps { readonly product: Product | undefined; readonly open: boolean; readonly onClose: () => void; readonly onEntered: () => void }

/** A new product, or a new version of one. */
export function ProductPanel(props: ProductPanelProps): ReactNode {
  return props.open ? <ProductSheet {...props} /> : null
}

const DENSITY_UNITS = ['kg/m3', 'degAPI', 'RD'] as const

function ProductSheet({ product, open, onClose, onEntered }: ProductPanelProps): ReactNode {
  const t = words.yard.productForm
  const [form, setForm] = useState(() => productForm(product))
  const effective = useEffective()
  const [state, run] = useAction('set-product')
  const placed = placeFindings(state.state === 'failed' && state.error instanceof RefusedByMain ? state.error.findings : [], PRODUCT_PLACES)
  const set = (change: Partial<ProductForm>): void => setForm((before) => ({ ...before, ...change }))
  const submit = async (): Promise<void> => {
    if (effective.ready && (await run({ product: productOf(form), ...effective.ready }))) onEntered()
  }
  return (
    <SheetPanel
      title={product ? t.title(product.code) : t.newTitle} open={open} onClose={onClose} width={620} submit={words.yard.tankForm.submit} onSubmit={() => void submit()} busy={state.state === 'running'} ready={effective.ready !== undefined}
      others={placed.others} fault={state.state === 'failed' && state.error instanceof FaultInMain ? state.error : undefined} says={<p>{words.yard.tankForm.says}</p>}
    >
      <div className="sheet-row">
        <TextField id="product-code" label={t.code} value={form.code} disabled={product !== undefined} onChange={(code) => set({ code: code.toUpperCase() })} error={placed.errors.get('product-code')} />
        <TextField id="product-name" label={t.name} value={form.name} onChange={(name) => set({ name })} error={placed.errors.get('product-name')} />
      </div>
      <div className="sheet-row">
        <OneOf id="product-commodity" label={t.commodity} value={form.commodity} of={COMMODITIES} say={(one) => words.yard.commodities[one]} onChange={(commodity) => set({ commodity })} />
        {form.commodity === 'special' && <TextField id="product-alpha" label={t.alpha} value={form.alpha} placeholder={t.alphaHint} onChange={(alpha) => set({ alpha })} error={placed.errors.get('product-alpha')} />}
        <OneOf id="product-edition" label={t.edition} value={form.edition} of={EDITIONS} say={(one) => one} onChange={(edition) => set({ edition })} />
      </div>
      <div className="sheet-row">
        <OneOf id="product-base" label={t.baseTemperature} value={form.baseTemperature} of={BASE_TEMPERATURES} say={(one) => one} onChange={(baseTemperature) => set({ baseTemperature })} />
        <OneOf id="product-volume" label={t.volumeUnit} value={form.volumeUnit} of={VOLUME_UNITS} say={(one) => one} onChange={(volumeUnit) => set({ volumeUnit })} />
        <OneOf id="product-mass" label={t.massUnit} value={form.massUnit} of={MASS_UNITS} say={(one) => words.yard.massUnits[one]} onChange={(massUnit) => set({ massUnit })} />
        <OneOf id="product-density" label={t.densityUnit} value={form.densityUnit} of={DENSITY_UNITS} say={(one) => words.yard.densities[one]} onChange={(densityUnit) => set({ densityUnit })} />
      </div>
      <EffectiveFields effective={effective} ids={{ from: 'set-from', by: 'set-by' }} errors={placed.errors} />
    </SheetPanel>
  )
}
