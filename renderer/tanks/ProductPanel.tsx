import { useMemo, useState, type ReactNode } from 'react'
import type { Product } from '../../core/quantity/index.ts'
import { MASS_UNITS, VOLUME_UNITS } from '../../core/units/index.ts'
import { FaultInMain, RefusedByMain } from '../bridge/bridge.ts'
import { useAction } from '../bridge/use-operation.ts'
import { CurveFields } from '../density/CurveFields.tsx'
import { settingsThatApply } from '../density/liquid-settings.ts'
import { nameIn } from '../density/place-on-fields.ts'
import { SettingFields } from '../density/SettingFields.tsx'
import { SheetChecks } from '../gauge/SheetChecks.tsx'
import { useCalmErrors } from '../gauge/use-calm-errors.ts'
import { TextField } from '../parts/Field.tsx'
import { placeFindings } from '../parts/place-findings.ts'
import { SheetPanel } from '../parts/SheetPanel.tsx'
import { words } from '../words/en.ts'
import { EffectiveFields } from './EffectiveFields.tsx'
import { OneOf } from './OneOf.tsx'
import { AIR_CHOICES, checkForm, DENSITY_UNITS, PRODUCT, productForm, productPlaces, type ProductForm } from './product-form.ts'
import { standardsOf } from './product-standard.ts'
import { useEffective } from './use-effective.ts'

interface ProductPanelProps { readonly product: Product | undefined; readonly open: boolean; readonly onClose: () => void; readonly onEntered: () => void }

/** A new product, or a new version of one. */
export function ProductPanel(props: ProductPanelProps): ReactNode {
  return props.open ? <ProductSheet {...props} /> : null
}

function ProductSheet({ product, open, onClose, onEntered }: ProductPanelProps): ReactNode {
  const t = words.yard.productForm
  const [form, setForm] = useState(() => productForm(product))
  const effective = useEffective()
  const [state, run] = useAction('set-product')
  const checked = useMemo(() => checkForm(form), [form])
  const calm = useCalmErrors(checked.findings)
  const places = productPlaces(form)
  const answered = placeFindings(state.state === 'failed' && state.error instanceof RefusedByMain ? state.error.findings : [], places)
  const errors = new Map([...answered.errors, ...calm.errors])
  const missing = [...checked.missing, ...(effective.read.ok ? [] : ['set-from']), ...(effective.by.trim() === '' ? ['set-by'] : [])]
  const fine = checked.findings.length === 0 && checked.missing.length === 0
  const ready = fine && effective.ready !== undefined
  const set = (change: Partial<ProductForm>): void => setForm((before) => ({ ...before, ...change }))
  const submit = async (): Promise<void> => {
    if (effective.ready && (await run({ product: checked.product, ...effective.ready }))) onEntered()
  }
  return (
    <SheetPanel
      title={product ? t.title(product.code) : t.newTitle} open={open} onClose={onClose} width={760} does="set-product" state={state} submit={words.yard.tankForm.submit} onSubmit={() => void submit()} busy={state.state === 'running'} ready={ready}
      others={answered.others} fault={state.state === 'failed' && state.error instanceof FaultInMain ? state.error : undefined} says={<p>{words.yard.tankForm.says}</p>}
    >
      <div className="product-fields" onFocus={calm.onFocus} onBlur={calm.onBlur}>
        <div className="sheet-row">
          <TextField id={`${PRODUCT}-code`} label={t.code} value={form.code} disabled={product !== undefined} onChange={(code) => set({ code: code.toUpperCase() })} error={errors.get(`${PRODUCT}-code`)} />
          <TextField id={`${PRODUCT}-name`} label={t.name} value={form.name} onChange={(name) => set({ name })} error={errors.get(`${PRODUCT}-name`)} />
        </div>
        <h2>{t.correcting}</h2>
        <div className="sheet-row product-settings"><SettingFields ids={PRODUCT} settings={form} errors={errors} onChange={set} /></div>
        {settingsThatApply(form).has('curve') && <CurveFields ids={PRODUCT} curve={form.curve} base={form.baseTemperature} errors={errors} onChange={(curve) => set({ curve })} />}
        {fine && <p className="quiet" role="status">{t.says}: {standardsOf(checked.product).join('; ') || words.yard.product.noFactor}</p>}
        <h2>{t.booking}</h2>
        <div className="sheet-row">
          <OneOf id="product-volume" label={t.volumeUnit} value={form.volumeUnit} of={VOLUME_UNITS} say={(one) => one} onChange={(volumeUnit) => set({ volumeUnit })} />
          <OneOf id="product-mass" label={t.massUnit} value={form.massUnit} of={MASS_UNITS} say={(one) => words.yard.massUnits[one]} onChange={(massUnit) => set({ massUnit })} />
          <OneOf id="product-densityUnit" label={t.densityUnit} value={form.densityUnit} of={DENSITY_UNITS} say={(one) => words.yard.densities[one]} onChange={(densityUnit) => set({ densityUnit })} />
          <OneOf id={`${PRODUCT}-airConvention`} label={t.airConvention} value={form.airConvention} of={AIR_CHOICES} say={(one) => (one === '' ? t.airUsual : words.density.mass.conventions[one])} onChange={(airConvention) => set({ airConvention })} />
        </div>
        <EffectiveFields effective={effective} ids={{ from: 'set-from', by: 'set-by' }} errors={errors} />
        <SheetChecks findings={calm.shown} missing={missing} nameOf={nameIn(places)} ready={t.allThere} exceptions={[]} />
      </div>
    </SheetPanel>
  )
}
