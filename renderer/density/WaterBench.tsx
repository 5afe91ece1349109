import { useMemo, type ReactNode } from 'react'
import { WATER, type WaterDensityOutput } from '../../core/volume-correction/index.ts'
import { withUnit } from '../gauge/usual-units.ts'
import { Figure } from '../parts/Figure.tsx'
import { TextField } from '../parts/Field.tsx'
import { OneOf } from '../tanks/OneOf.tsx'
import { words } from '../words/en.ts'
import { Bench, BenchHead } from './Bench.tsx'
import { nameIn } from './place-on-fields.ts'
import { useKept } from './use-kept.ts'
import { computeWater, EMPTY_WATER, EQUATIONS, WATER_UNITS, waterFormSchema } from './water-form.ts'

/** Density of water, fresh or of the sea, and its ratio to another temperature. */
export function WaterBench(): ReactNode {
  const t = words.density.water
  const [form, setForm] = useKept('water', waterFormSchema, EMPTY_WATER)
  const computed = useMemo(() => computeWater(form), [form])
  const field = (name: keyof typeof WATER_UNITS, label: string, hint: string, errors: ReadonlyMap<string, string>): ReactNode => (
    <TextField id={`water-${name}`} label={label} measured value={form[name]} placeholder={hint} error={errors.get(`water-${name}`)} onChange={(value) => setForm({ ...form, [name]: value })} onBlur={() => setForm({ ...form, [name]: withUnit(form[name], WATER_UNITS[name]) })} />
  )
  return (
    <Bench
      first="water-temperature" form={form} empty={EMPTY_WATER} onForm={setForm} nameOf={nameIn(computed.places)} findings={computed.findings} missing={computed.missing}
      lines={computed.value?.worksheet ?? []} head={computed.value ? <WaterHead output={computed.value} /> : null}
      fields={(errors) => (
        <>
          {field('temperature', t.temperature, WATER_UNITS.temperature, errors)}
          {field('salinity', t.salinity, `${WATER_UNITS.salinity}, ${words.density.optional}`, errors)}
          {field('referenceTemperature', t.reference, `${WATER_UNITS.referenceTemperature}, ${words.density.optional}`, errors)}
          <div className="bench-wide"><OneOf id="water-equation" label={t.equation} value={form.equation} of={EQUATIONS} say={(one) => (one === '' ? t.usual : WATER[one].standard)} onChange={(equation) => setForm({ ...form, equation })} /></div>
        </>
      )}
    />
  )
}

export function WaterHead({ output: { density, ratio, standard } }: { readonly output: WaterDensityOutput }): ReactNode {
  const t = words.density.water
  return <BenchHead title={t.density} figure={<Figure value={density.value} unit={density.unit} />} by={`${t.standard} ${standard}`} rest={ratio === null ? [] : [[t.ratio, <Figure value={ratio} unit="" />]]} />
}
