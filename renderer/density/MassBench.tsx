import { useMemo, type ReactNode } from 'react'
import { AIR_CONVENTION_NAMES, type MassAndWeightOutput } from '../../core/quantity/index.ts'
import { BASE_TEMPERATURES } from '../../core/volume-correction/index.ts'
import { withUnit } from '../gauge/usual-units.ts'
import { Figure } from '../parts/Figure.tsx'
import { TextField } from '../parts/Field.tsx'
import { OneOf } from '../tanks/OneOf.tsx'
import { words } from '../words/en.ts'
import { Bench } from './Bench.tsx'
import { AMOUNTS, computeMass, EMPTY_MASS, massFormSchema, massUnits } from './mass-form.ts'
import { nameIn } from './place-on-fields.ts'
import { useKept } from './use-kept.ts'

/** Volume, mass in vacuum and weight in air, from any one of them, in every unit. */
export function MassBench(): ReactNode {
  const t = words.density.mass
  const [form, setForm] = useKept('mass', massFormSchema, EMPTY_MASS)
  const computed = useMemo(() => computeMass(form), [form])
  const units = massUnits(form)
  const field = (name: 'density' | 'amount', errors: ReadonlyMap<string, string>): ReactNode => (
    <TextField id={`mass-${name}`} label={t[name]} measured value={form[name]} placeholder={units[name]} error={errors.get(`mass-${name}`)} onChange={(value) => setForm({ ...form, [name]: value })} onBlur={() => setForm({ ...form, [name]: withUnit(form[name], units[name]) })} />
  )
  return (
    <Bench
      first="mass-density" form={form} empty={EMPTY_MASS} onForm={setForm} nameOf={nameIn(computed.places)} findings={computed.findings} missing={computed.missing}
      lines={computed.value?.worksheet ?? []} head={computed.value ? <MassTable output={computed.value} /> : null}
      fields={(errors) => (
        <>
          <OneOf id="mass-baseTemperature" label={t.baseTemperature} value={form.baseTemperature} of={BASE_TEMPERATURES} say={(one) => one} onChange={(baseTemperature) => setForm({ ...form, baseTemperature })} />
          {field('density', errors)}
          <OneOf id="mass-of" label={t.of} value={form.of} of={AMOUNTS} say={(one) => t.kinds[one]} onChange={(of) => setForm({ ...form, of })} />
          {field('amount', errors)}
          <div className="bench-wide"><OneOf id="mass-convention" label={t.convention} value={form.convention} of={AIR_CONVENTION_NAMES} say={(one) => t.conventions[one]} onChange={(convention) => setForm({ ...form, convention })} /></div>
        </>
      )}
    />
  )
}

/** The amount in every unit: a line for each unit of mass, then the volumes. */
export function MassTable({ output }: { readonly output: MassAndWeightOutput }): ReactNode {
  const t = words.density.mass
  const { massInVacuum, weightInAir, volume, densityInVacuum, densityInAir } = output
  return (
    <div className="bench-masses">
      <table className="dense bench-table" aria-label={t.inVacuum}>
        <thead><tr><th scope="col">{t.unit}</th><th scope="col" className="end">{t.inVacuum}</th><th scope="col" className="end">{t.inAir}</th></tr></thead>
        <tbody>
          {massInVacuum.map((mass, i) => {
            const unit = words.yard.massUnits[mass.unit as keyof typeof words.yard.massUnits] ?? mass.unit
            return <tr key={mass.unit}><td>{unit}</td><td className="end"><Figure value={mass.value} unit={unit} unitInHead /></td><td className="end"><Figure value={weightInAir[i]?.value} unit={unit} unitInHead /></td></tr>
          })}
          <tr><td>{t.density3}</td><td className="end"><Figure value={densityInVacuum.value} unit="kg/m3" unitInHead /></td><td className="end"><Figure value={densityInAir.value} unit="kg/m3" unitInHead /></td></tr>
        </tbody>
      </table>
      <table className="dense bench-table" aria-label={t.volume}>
        <thead><tr><th scope="col">{t.unit}</th><th scope="col" className="end">{t.volume}</th></tr></thead>
        <tbody>{volume.map(({ value, unit }) => <tr key={unit}><td>{unit}</td><td className="end"><Figure value={value} unit={unit} unitInHead /></td></tr>)}</tbody>
      </table>
      <p className="bench-by quiet">{output.convention}</p>
    </div>
  )
}
