import type { ReactNode } from 'react'
import { withUsualUnit, type UsualUnits } from '../gauge/usual-units.ts'
import { SelectField, TextField } from '../parts/Field.tsx'
import { words } from '../words/en.ts'
import { OneOf } from './OneOf.tsx'
import type { TankForm } from './tank-form.ts'
import { YES_NO } from './yes-no.ts'

interface RoofFieldsProps { readonly form: TankForm; readonly units: UsualUnits; readonly onChange: (change: Partial<TankForm>) => void; readonly errors: ReadonlyMap<string, string> }

const LEGS = ['none', 'low', 'high'] as const
const KINDS = ['none', 'internal-floating', 'external-floating'] as const

/** The roof: nothing more for a cone, mass and critical zone for one that floats. */
export function RoofFields({ form, units, onChange, errors }: RoofFieldsProps): ReactNode {
  const t = words.yard.tankForm
  const level = (field: 'criticalFrom' | 'criticalTo' | 'legsLow' | 'legsHigh', id: string, label: string): ReactNode => (
    <TextField id={id} label={label} measured value={form[field]} onChange={(value) => onChange({ [field]: value })} onBlur={() => onChange({ [field]: withUsualUnit(form[field], 'level', units) })} error={errors.get(id)} />
  )
  return (
    <div className="sheet-row">
      <SelectField id="tank-roof" label={t.roof} value={form.roof} choices={KINDS.map((value) => ({ value, label: value === 'none' ? t.roofNone : words.yard.roofs[value] }))} onChange={(value) => onChange({ roof: KINDS.find((kind) => kind === value) ?? 'none' })} error={errors.get('tank-roof')} />
      {form.roof !== 'none' && (
        <>
          <TextField id="tank-mass" label={t.mass} measured value={form.mass} placeholder="48500 kg" onChange={(mass) => onChange({ mass })} error={errors.get('tank-mass')} />
          {level('criticalFrom', 'tank-critical-from', t.criticalFrom)}
          {level('criticalTo', 'tank-critical-to', t.criticalTo)}
          <OneOf id="tank-legs" label={words.tables.legs.position} value={form.legs} of={LEGS} say={(one) => words.tables.legs[one]} onChange={(legs) => onChange({ legs })} />
          {form.legs !== 'none' && <>{level('legsLow', 'tank-legs-low', words.tables.legs.lowHeight)}{level('legsHigh', 'tank-legs-high', words.tables.legs.highHeight)}</>}
          <SelectField id="tank-in-table" label={t.inTable} value={String(form.inTable)} choices={YES_NO} onChange={(value) => onChange({ inTable: value === 'true' })} />
          {form.inTable && (
            <>
              <TextField id="tank-roof-density" label={t.referenceDensity} measured value={form.referenceDensity} onChange={(referenceDensity) => onChange({ referenceDensity })} onBlur={() => onChange({ referenceDensity: withUsualUnit(form.referenceDensity, 'density', units) })} error={errors.get('tank-roof-density')} />
              <TextField id="tank-printed" label={t.printed} value={form.printedAdjustment} placeholder={t.printedHint} onChange={(printedAdjustment) => onChange({ printedAdjustment })} error={errors.get('tank-printed')} />
            </>
          )}
        </>
      )}
    </div>
  )
}
