import type { ReactNode } from 'react'
import { SelectField, TextField } from '../parts/Field.tsx'
import { words } from '../words/en.ts'
import { kindOf } from './field-kinds.ts'
import { valueOf, type GaugeField, type GaugeForm, type ListName } from './gauge-form.ts'
import { nameOfLine } from './line-names.ts'
import { unitHint, withUsualUnit, type UsualUnits } from './usual-units.ts'

interface GaugeLineProps {
  /** Column of the sheet: `opening`. */
  readonly column: string
  readonly form: GaugeForm
  readonly line: GaugeField
  readonly units: UsualUnits
  readonly error: string | undefined
  readonly onEdit: (value: string) => void
  readonly onDrop: (list: ListName, at: number) => void
}

type Choices = readonly { readonly value: string; readonly label: string }[]
const choices = (labels: Readonly<Record<string, string>>): Choices => Object.entries(labels).map(([value, label]) => ({ value, label }))
const BY_CHOICE: Readonly<Partial<Record<GaugeField, Choices>>> = {
  levelBy: choices(words.gauge.levelBy), instrument: choices(words.gauge.instruments), average: choices(words.gauge.averages), readBy: choices(words.gauge.readBys),
  gaugeStatus: choices(words.gauge.statuses), waterBy: choices(words.gauge.waterBys), 'tape.acceptance': choices(words.gauge.acceptances), 'tape.bob': choices(words.gauge.bobs),
}
const PLACES = choices(words.gauge.places)
const SAMPLE_INSTRUMENTS = (['hydrometer', 'density-meter', 'base'] as const).map((value) => ({ value, label: words.gauge.instruments[value] }))
/** Values of their own form, whatever the units of tank and product are. */
const HINTS: Readonly<Partial<Record<GaugeField, string>>> = {
  at: words.gauge.timeHint, roofLoad: '3500 kg', waterOrigin: words.gauge.originHint, 'hybrid.gravity': '9.80665 m/s2', 'hybrid.vapourDensity': '1.2 kg/m3', 'hybrid.airDensity': '1.2 kg/m3', 'hybrid.limit': '1.0 kg/m3',
}

function choicesOf(line: GaugeField): Choices | undefined {
  if (/^samples\.\d+\.from$/.test(line)) return PLACES
  return /^samples\.\d+\.instrument$/.test(line) ? SAMPLE_INSTRUMENTS : BY_CHOICE[line]
}

/** The line of an entry in a list that carries the button to take it away again. */
const DROPPED_AT = /^(spots|readings|samples)\.(\d+)\.(?:temperature|read|number)$/

/** One field of the gauge sheet; a bare number gets its usual unit when the field is left. */
export function GaugeLine({ column, form, line, units, error, onEdit, onDrop }: GaugeLineProps): ReactNode {
  const value = valueOf(form, line)
  const shared = { id: `${column}.${line}`, label: nameOfLine(column, line), labelHidden: true, value, error, onChange: onEdit }
  const offered = choicesOf(line)
  if (offered !== undefined) return <SelectField {...shared} choices={offered} />
  const kind = kindOf(line)
  const complete = (): void => {
    const full = withUsualUnit(value, kind, units)
    if (full !== value) onEdit(full)
  }
  const hint = HINTS[line] ?? (/^samples\.\d+\.at$/.test(line) ? words.gauge.timeHint : unitHint(kind, units))
  const field = <TextField {...shared} measured={kind !== 'words'} placeholder={hint} onBlur={complete} />
  const dropped = DROPPED_AT.exec(line)
  if (!dropped) return field
  const [list, at] = [dropped[1] as ListName, Number(dropped[2])]
  return <div className="gauge-spot">{field}<button type="button" aria-label={words.gauge.drop[list](at + 1)} onClick={() => onDrop(list, at)}>×</button></div>
}
