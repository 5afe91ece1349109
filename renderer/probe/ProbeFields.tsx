import { useState, type ReactNode } from 'react'
import type { UsualUnits } from '../gauge/usual-units.ts'
import { Button } from '../parts/Button.tsx'
import { enterMovesOn, TextField } from '../parts/Field.tsx'
import { words } from '../words/en.ts'
import { nameOfProbeField, withProbeUnit } from './compute-probe.ts'
import { NEEDED_SETTINGS, PROBE_SETTINGS, type ModuleField, type ProbeAction, type ProbeForm, type ProbeSetting } from './probe-form.ts'

interface ProbeFieldsProps {
  readonly form: ProbeForm
  readonly units: UsualUnits
  readonly errors: ReadonlyMap<string, string>
  readonly act: (action: ProbeAction) => void
}

const COLUMNS: readonly ModuleField[] = ['name', 'height', 'pressure', 'temperature', 'offset']

/** What was read: who and when, the settings of the probe, and a row for each module, lowest first. */
export function ProbeFields({ form, units, errors, act }: ProbeFieldsProps): ReactNode {
  const t = words.probe
  const others = PROBE_SETTINGS.filter((setting) => !NEEDED_SETTINGS.some((needed) => needed === setting))
  const [more, setMore] = useState(others.some((setting) => form.settings[setting] !== ''))
  const shown = more || others.some((setting) => form.settings[setting] !== '' || errors.has(`probe.${setting}`))
  return (
    <div className="probe-fields" onKeyDown={enterMovesOn}>
      <div className="probe-settings">
        <TextField id="probe.at" label={t.at} value={form.at} placeholder={t.timeHint} error={errors.get('probe.at')} onChange={(value) => act({ do: 'write', field: 'at', value })} />
        <TextField id="probe.by" label={t.by} value={form.by} onChange={(value) => act({ do: 'write', field: 'by', value })} />
        {NEEDED_SETTINGS.map((setting) => <Setting key={setting} setting={setting} form={form} units={units} errors={errors} act={act} />)}
      </div>
      <table className="probe-modules">
        <caption className="read-aloud">{t.modules}</caption>
        <thead><tr>{COLUMNS.map((column) => <th key={column} scope="col">{t.columns[column]}</th>)}<th><span className="read-aloud">{t.dropModule('')}</span></th></tr></thead>
        <tbody>
          {form.modules.map((module, i) => (
            <tr key={i}>
              {COLUMNS.map((column) => <td key={column}><Cell at={i} column={column} form={form} units={units} errors={errors} act={act} /></td>)}
              <td><button type="button" className="probe-drop" aria-label={t.dropModule(module.name === '' ? t.noModule : module.name)} onClick={() => act({ do: 'drop-module', at: i })}>×</button></td>
            </tr>
          ))}
        </tbody>
      </table>
      <div className="probe-more">
        <Button disabled={form.modules.length >= 12} onClick={() => act({ do: 'add-module' })}>{t.addModule}</Button>
        <button type="button" className="gauge-fold" aria-expanded={shown} onClick={() => setMore(!more)}>{shown ? '▾' : '▸'} {t.terms}</button>
      </div>
      {shown && <div className="probe-settings">{others.map((setting) => <Setting key={setting} setting={setting} form={form} units={units} errors={errors} act={act} />)}</div>}
    </div>
  )
}

function Setting({ setting, form, units, errors, act }: ProbeFieldsProps & { readonly setting: ProbeSetting }): ReactNode {
  const value = form.settings[setting]
  const write = (next: string): void => act({ do: 'write-setting', field: setting, value: next })
  return <TextField id={`probe.${setting}`} label={words.probe.fields[setting]} measured value={value} placeholder={words.probe.hints[setting]} error={errors.get(`probe.${setting}`)} onChange={write} onBlur={() => complete(value, setting, units, write)} />
}

function Cell({ at, column, form, units, errors, act }: ProbeFieldsProps & { readonly at: number; readonly column: ModuleField }): ReactNode {
  const id = `probe.modules.${at}.${column}`
  const value = form.modules[at]?.[column] ?? ''
  const write = (next: string): void => act({ do: 'write-module', at, field: column, value: next })
  return <TextField id={id} label={nameOfProbeField(form, id)} labelHidden measured={column !== 'name'} value={value} error={errors.get(id)} onChange={write} onBlur={() => complete(value, column, units, write)} />
}

/** A bare number visibly gets its usual unit on leaving the field. */
function complete(value: string, field: ModuleField | ProbeSetting, units: UsualUnits, write: (next: string) => void): void {
  const full = withProbeUnit(value, field, units)
  if (full !== value) write(full)
}
