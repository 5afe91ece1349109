import { useState, type ReactNode } from 'react'
import { useTerminal } from '../app/TerminalContext.tsx'
import { withUnit } from '../gauge/usual-units.ts'
import { SelectField, TextField } from '../parts/Field.tsx'
import { OneOf } from '../tanks/OneOf.tsx'
import { words } from '../words/en.ts'
import { CurveFields } from './CurveFields.tsx'
import { INSTRUMENTS, likeProduct, LIQUID, unitsOf, type LiquidForm } from './liquid-form.ts'
import { settingsThatApply } from './liquid-settings.ts'
import { SettingFields } from './SettingFields.tsx'

interface LiquidFieldsProps { readonly form: LiquidForm; readonly errors: ReadonlyMap<string, string>; readonly onForm: (form: LiquidForm) => void }

/** The liquid: as a product on record or as set here, and its density as it was read. */
export function LiquidFields({ form, errors, onForm }: LiquidFieldsProps): ReactNode {
  const t = words.density.liquid
  const { now } = useTerminal()
  const [product, setProduct] = useState('')
  const units = unitsOf(form)
  const set = (change: Partial<LiquidForm>): void => { onForm({ ...form, ...change }) }
  const take = (code: string): void => {
    setProduct(code)
    const found = now.products.find((one) => one.code === code)
    if (found) onForm(likeProduct(form, found))
  }
  const measured = (name: 'density' | 'densityTemperature' | 'densityPressure', unit: string, hint = unit): ReactNode => (
    <TextField id={`${LIQUID}-${name}`} label={t[name]} measured value={form[name]} placeholder={hint} error={errors.get(`${LIQUID}-${name}`)} onChange={(value) => set({ [name]: value })} onBlur={() => set({ [name]: withUnit(form[name], unit) })} />
  )
  return (
    <>
      {now.products.length > 0 && <SelectField id={`${LIQUID}-product`} label={t.product} value={product} placeholder={t.ownSettings} choices={now.products.map(({ code, name }) => ({ value: code, label: `${code}  ${name}` }))} onChange={take} />}
      <SettingFields ids={LIQUID} settings={form} without={['molarMass']} errors={errors} onChange={(change) => { setProduct(''); set(change) }} />
      {settingsThatApply(form).has('curve') && <div className="bench-wide"><CurveFields ids={LIQUID} curve={form.curve} base={form.baseTemperature} errors={errors} onChange={(curve) => set({ curve })} /></div>}
      <div className="bench-break" />
      {measured('density', units.density)}
      <OneOf id={`${LIQUID}-instrument`} label={t.instrument} value={form.instrument} of={INSTRUMENTS} say={(one) => t.instruments[one]} onChange={(instrument) => set({ instrument })} />
      {form.instrument !== 'base' && <>{measured('densityTemperature', units.temperature)}{measured('densityPressure', units.pressure, `${units.pressure}, ${words.density.optional}`)}</>}
    </>
  )
}
