import { useMemo, type ReactNode } from 'react'
import { VOLUME_UNITS } from '../../core/units/index.ts'
import { BASE_TEMPERATURES, type BlendDensityOutput } from '../../core/volume-correction/index.ts'
import { withUnit } from '../gauge/usual-units.ts'
import { Button } from '../parts/Button.tsx'
import { Figure } from '../parts/Figure.tsx'
import { TextField } from '../parts/Field.tsx'
import { OneOf } from '../tanks/OneOf.tsx'
import { words } from '../words/en.ts'
import { Bench, BenchHead } from './Bench.tsx'
import { batchId, blendFormSchema, blendUnits, computeBlend, EMPTY_BATCH, EMPTY_BLEND, MOST_BATCHES, withBatch, type BatchField, type BlendForm } from './blend-form.ts'
import { nameIn } from './place-on-fields.ts'
import { useKept } from './use-kept.ts'

/** Several batches to the density of their blend, by mass. */
export function BlendBench(): ReactNode {
  const t = words.density.blend
  const [form, setForm] = useKept('blend', blendFormSchema, EMPTY_BLEND)
  const computed = useMemo(() => computeBlend(form), [form])
  return (
    <Bench
      first={batchId(0, 'density')} form={form} empty={EMPTY_BLEND} onForm={setForm} nameOf={nameIn(computed.places)} findings={computed.findings} missing={computed.missing}
      lines={computed.value?.worksheet ?? []} head={computed.value ? <BlendHead output={computed.value} /> : null}
      fields={(errors) => (
        <>
          <OneOf id="blend-baseTemperature" label={t.baseTemperature} value={form.baseTemperature} of={BASE_TEMPERATURES} say={(one) => one} onChange={(baseTemperature) => setForm({ ...form, baseTemperature })} />
          <OneOf id="blend-volumeUnit" label={t.volumeUnit} value={form.volumeUnit} of={VOLUME_UNITS} say={(one) => one} onChange={(volumeUnit) => setForm({ ...form, volumeUnit })} />
          <Batches form={form} errors={errors} onForm={setForm} />
        </>
      )}
    />
  )
}

function Batches({ form, errors, onForm }: { readonly form: BlendForm; readonly errors: ReadonlyMap<string, string>; readonly onForm: (form: BlendForm) => void }): ReactNode {
  const t = words.density.blend
  const units = blendUnits(form)
  const cell = (line: number, field: BatchField, label: string, hint: string): ReactNode => {
    const typed = form.batches[line]?.[field] ?? ''
    const complete = (): void => { if (field !== 'name') onForm(withBatch(form, line, { [field]: withUnit(typed, units[field]) })) }
    return <TextField id={batchId(line, field)} label={label} labelHidden measured={field !== 'name'} value={typed} placeholder={hint} error={errors.get(batchId(line, field))} onChange={(value) => onForm(withBatch(form, line, { [field]: value }))} onBlur={complete} />
  }
  return (
    <div className="batches">
      <div className="batch batch-head" aria-hidden="true"><span>{t.batch}</span><span>{t.density}</span><span>{t.amount}</span></div>
      {form.batches.map((_, line) => (
        <div key={line} className="batch">
          {cell(line, 'name', t.lineName(line + 1), t.nameHint(line + 1))}
          {cell(line, 'density', t.lineDensity(line + 1), units.density)}
          {cell(line, 'amount', t.lineAmount(line + 1), units.amount)}
          {form.batches.length > 2 && <button type="button" aria-label={t.drop(line + 1)} onClick={() => onForm({ ...form, batches: form.batches.filter((__, i) => i !== line) })}>×</button>}
        </div>
      ))}
      {form.batches.length < MOST_BATCHES && <div className="batch-add"><Button onClick={() => onForm({ ...form, batches: [...form.batches, EMPTY_BATCH] })}>{t.add}</Button></div>}
    </div>
  )
}

export function BlendHead({ output: { density, volume, mass } }: { readonly output: BlendDensityOutput }): ReactNode {
  const t = words.density.blend
  return <BenchHead title={t.blend} figure={<Figure value={density.value} unit={density.unit} />} by={t.noShrinkage} rest={[[t.volume, <Figure value={volume.value} unit={volume.unit} />], [t.mass, <Figure value={mass.value} unit={mass.unit} />]]} />
}
