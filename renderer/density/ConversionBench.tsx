import { useMemo, type ReactNode } from 'react'
import type { DensityConversionOutput } from '../../core/volume-correction/index.ts'
import { withUnit } from '../gauge/usual-units.ts'
import { Figure } from '../parts/Figure.tsx'
import { TextField } from '../parts/Field.tsx'
import { OneOf } from '../tanks/OneOf.tsx'
import { words } from '../words/en.ts'
import { Bench, BenchHead } from './Bench.tsx'
import { computeConversion, conversionFormSchema, EMPTY_CONVERSION, METERS, meterUnit } from './conversion-form.ts'
import { EMPTY_LIQUID, LIQUID, liquidFormSchema } from './liquid-form.ts'
import { LiquidFields } from './LiquidFields.tsx'
import { nameIn } from './place-on-fields.ts'
import { useKept } from './use-kept.ts'

const EMPTY = { liquid: EMPTY_LIQUID, form: EMPTY_CONVERSION }

/** One density in every way of writing it: API gravity, relative density, kg/m³ at 60 °F, 15 °C and 20 °C. */
export function ConversionBench(): ReactNode {
  const t = words.density.conversion
  const [liquid, setLiquid] = useKept('liquid', liquidFormSchema, EMPTY_LIQUID)
  const [form, setForm] = useKept('conversion', conversionFormSchema, EMPTY_CONVERSION)
  const computed = useMemo(() => computeConversion(liquid, form), [liquid, form])
  const unit = meterUnit(liquid)
  const field = (name: 'meterFactor' | 'provingReference' | 'provingMeter', bare: string, hint: string, errors: ReadonlyMap<string, string>): ReactNode => (
    <TextField id={`conversion-${name}`} label={t[name]} measured value={form[name]} placeholder={hint} error={errors.get(`conversion-${name}`)} onChange={(value) => setForm({ ...form, [name]: value })} onBlur={() => { if (bare !== '') setForm({ ...form, [name]: withUnit(form[name], bare) }) }} />
  )
  return (
    <Bench
      first={`${LIQUID}-commodity`} form={{ liquid, form }} empty={EMPTY} onForm={(both) => { setLiquid(both.liquid); setForm(both.form) }} nameOf={nameIn(computed.places)} findings={computed.findings} missing={computed.missing}
      lines={computed.value?.worksheet ?? []} head={computed.value ? <ConversionHead output={computed.value} /> : null}
      fields={(errors) => (
        <>
          <LiquidFields form={liquid} errors={errors} onForm={setLiquid} />
          {liquid.instrument === 'meter' && (
            <>
              <OneOf id="conversion-meter" label={t.meter} value={form.meter} of={METERS} say={(one) => t.meters[one]} onChange={(meter) => setForm({ ...form, meter })} />
              {form.meter === 'factor' && field('meterFactor', '', '1.0012', errors)}
              {form.meter === 'proving' && <>{field('provingReference', unit, unit, errors)}{field('provingMeter', unit, unit, errors)}</>}
            </>
          )}
        </>
      )}
    />
  )
}

/** The density at 15 °C large, the other ways of writing it below. */
export function ConversionHead({ output }: { readonly output: DensityConversionOutput }): ReactNode {
  const t = words.density.conversion
  const { api, relativeDensity, density60, density15, density20 } = output
  return (
    <BenchHead
      title={t.density15} figure={<Figure value={density15.value} unit={density15.unit} />} by={`${t.standard} ${output.standard}`}
      rest={[
        [t.api, <Figure value={api.value} unit={api.unit} />], [t.density60, <Figure value={density60.value} unit={density60.unit} />],
        [t.relativeDensity, <Figure value={relativeDensity.value} unit={relativeDensity.unit} />], [t.density20, <Figure value={density20.value} unit={density20.unit} />],
        ...(output.meterFactor === null ? [] : [[t.factor, <Figure value={output.meterFactor} unit="" />]] as const),
      ]}
    />
  )
}
