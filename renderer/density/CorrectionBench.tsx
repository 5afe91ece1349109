import { useMemo, type ReactNode } from 'react'
import { discriminate } from '../../core/rounding/index.ts'
import type { VolumeCorrectionOutput } from '../../core/volume-correction/index.ts'
import { withUnit } from '../gauge/usual-units.ts'
import { Figure } from '../parts/Figure.tsx'
import { TextField } from '../parts/Field.tsx'
import { OneOf } from '../tanks/OneOf.tsx'
import { words } from '../words/en.ts'
import { Bench, BenchHead } from './Bench.tsx'
import { computeCorrection, correctionFormSchema, EMPTY_CORRECTION, ROUNDINGS } from './correction-form.ts'
import { EMPTY_LIQUID, LIQUID, liquidFormSchema, unitsOf } from './liquid-form.ts'
import { LiquidFields } from './LiquidFields.tsx'
import { nameIn } from './place-on-fields.ts'
import { useKept } from './use-kept.ts'

const EMPTY = { liquid: EMPTY_LIQUID, form: EMPTY_CORRECTION }

/** Observed density to base density, and the factors at a temperature and pressure. */
export function CorrectionBench(): ReactNode {
  const t = words.density.correction
  const [liquid, setLiquid] = useKept('liquid', liquidFormSchema, EMPTY_LIQUID)
  const [form, setForm] = useKept('correction', correctionFormSchema, EMPTY_CORRECTION)
  const computed = useMemo(() => computeCorrection(liquid, form), [liquid, form])
  const units = unitsOf(liquid)
  return (
    <Bench
      first={`${LIQUID}-commodity`} form={{ liquid, form }} empty={EMPTY} onForm={(both) => { setLiquid(both.liquid); setForm(both.form) }} nameOf={nameIn(computed.places)} findings={computed.findings} missing={computed.missing}
      lines={computed.value?.worksheet ?? []} head={computed.value ? <CorrectionHead output={computed.value} /> : null}
      fields={(errors) => (
        <>
          <LiquidFields form={liquid} errors={errors} onForm={setLiquid} />
          <div className="bench-break" />
          <TextField id="correction-temperature" label={t.temperature} measured value={form.temperature} placeholder={units.temperature} error={errors.get('correction-temperature')} onChange={(temperature) => setForm({ ...form, temperature })} onBlur={() => setForm({ ...form, temperature: withUnit(form.temperature, units.temperature) })} />
          <TextField id="correction-pressure" label={t.pressure} measured value={form.pressure} placeholder={`${units.pressure}, ${words.density.optional}`} error={errors.get('correction-pressure')} onChange={(pressure) => setForm({ ...form, pressure })} onBlur={() => setForm({ ...form, pressure: withUnit(form.pressure, units.pressure) })} />
          <OneOf id="correction-rounding" label={t.rounding} value={form.rounding} of={ROUNDINGS} say={(one) => t.roundings[one]} onChange={(rounding) => setForm({ ...form, rounding })} />
        </>
      )}
    />
  )
}

/** CTPL large; the factors it is of, the densities, and the way back to where the density was read. */
export function CorrectionHead({ output }: { readonly output: VolumeCorrectionOutput }): ReactNode {
  const t = words.density.correction
  const { baseDensity, observed } = output
  return (
    <BenchHead
      title={t.ctpl} figure={<Figure value={output.ctpl} unit="" />} by={`${t.standard} ${output.standard}`}
      rest={[
        [t.ctl, <Figure value={output.ctl} unit="" />], [t.baseDensity, <Figure value={baseDensity.value} unit={baseDensity.unit} />],
        [t.cpl, <Figure value={output.cpl} unit="" />], [t.there, <Figure value={discriminate('converted kg/m3', output.densityAtConditions).text} unit="kg/m3" />],
        ...(observed === null ? [] : [[t.observed, <Figure value={observed.ctpl} unit="" />], [t.toAlternate, <Figure value={observed.toAlternate} unit="" />]] as const),
      ]}
    />
  )
}
