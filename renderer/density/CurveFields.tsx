import { useState, type ClipboardEvent, type ReactNode } from 'react'
import type { BaseTemperature } from '../../core/volume-correction/index.ts'
import { withUnit } from '../gauge/usual-units.ts'
import { FilePick } from '../parts/FilePick.tsx'
import { TextField } from '../parts/Field.tsx'
import { Findings } from '../parts/Findings.tsx'
import { OneOf } from '../tanks/OneOf.tsx'
import { words } from '../words/en.ts'
import { completedPoint, curveUnits, withPoint, withPoints, type CurveForm } from './curve-form.ts'
import { readCurveText, type ReadText } from './curve-text.ts'
import './curve.css'
import { pointId } from './place-on-fields.ts'

interface CurveFieldsProps { readonly ids: string; readonly curve: CurveForm; readonly base: BaseTemperature; readonly errors: ReadonlyMap<string, string>; readonly onChange: (curve: CurveForm) => void }

/** A product curve: its certificate, and its points typed line by line, pasted from a spreadsheet or taken from a file. */
export function CurveFields({ ids, curve, base, errors, onChange }: CurveFieldsProps): ReactNode {
  const t = words.density.curve
  const [last, setLast] = useState<ReadText>()
  const [fileError, setFileError] = useState<string>()
  const units = curveUnits(curve.of, base)
  const take = (text: string): void => {
    const read = readCurveText(curve, text, base)
    setLast(read)
    setFileError(undefined)
    onChange(read.curve)
  }
  const paste = (event: ClipboardEvent): void => {
    const text = event.clipboardData.getData('text/plain')
    if (!/[\n\t]/.test(text.trim())) return
    event.preventDefault()
    take(text)
  }
  const about = (name: 'certificate' | 'laboratory' | 'date' | 'tolerance', hint = ''): ReactNode => (
    <TextField id={`${ids}-curve-${name}`} label={t[name]} value={curve[name]} placeholder={hint} error={errors.get(`${ids}-curve-${name}`)} onChange={(value) => onChange({ ...curve, [name]: value })}
      onBlur={() => { if (name === 'tolerance') onChange({ ...curve, tolerance: withUnit(curve.tolerance, '%') }) }} />
  )
  const cell = (line: number, part: 'temperature' | 'value', label: string): ReactNode => {
    const id = pointId(ids, line, part)
    const point = curve.points[line] ?? { temperature: '', value: '' }
    return (
      <TextField id={id} label={label} labelHidden measured value={point[part]} placeholder={units[part]} error={errors.get(id)} onChange={(value) => onChange(withPoint(curve, line, { [part]: value }))}
        onBlur={() => { if (completedPoint(point, units)[part] !== point[part]) onChange(withPoint(curve, line, { [part]: completedPoint(point, units)[part] })) }} />
    )
  }
  return (
    <section aria-label={t.title} className="curve">
      <h2>{t.title}</h2>
      <div className="curve-about">{about('certificate')}{about('laboratory')}{about('date', t.dateHint)}</div>
      <div className="curve-about">
        <OneOf id={`${ids}-curve-of`} label={t.of} value={curve.of} of={['density', 'vcf'] as const} say={(one) => t.kinds[one]} onChange={(of) => onChange({ ...curve, of })} />
        {about('tolerance', t.toleranceHint)}
      </div>
      <FilePick id={`${ids}-curve-file`} choose={t.choose} hint={t.hint} accept=".csv,.txt,text/csv,text/plain" error={fileError} onFile={(file) => { file.text().then(take, () => setFileError(t.unreadable)) }} />
      {last && (last.points > 0 || last.notRead.length > 0) && (
        <div role="status" className="curve-read">
          <p className="quiet">{t.read(last.points)}</p>
          <Findings findings={last.notRead.slice(0, 4).map((message) => ({ path: '', message }))} />
        </div>
      )}
      <div className="curve-points" onPaste={paste}>
        <div className="curve-line curve-head" aria-hidden="true"><span /><span>{t.temperature}</span><span>{t.values[curve.of]}</span></div>
        {curve.points.map((_, line) => (
          <div key={line} className="curve-line">
            <span className="quiet" aria-hidden="true">{line + 1}</span>
            {cell(line, 'temperature', t.lineTemperature(line + 1))}
            {cell(line, 'value', t.lineValue(line + 1, curve.of))}
            <button type="button" aria-label={t.drop(line + 1)} onClick={() => onChange(withPoints(curve, curve.points.filter((__, i) => i !== line)))}>×</button>
          </div>
        ))}
      </div>
    </section>
  )
}
