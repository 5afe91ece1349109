import type { MoreLine } from '../gauge/GaugeSheet.tsx'
import { withUsualUnit, type UsualUnits } from '../gauge/usual-units.ts'
import { TextField } from '../parts/Field.tsx'
import { words } from '../words/en.ts'
import type { GaugeName, LineFillField, TransferAction, TransferForm } from './transfer-form.ts'

/** The lines for what stood in the transfer line at both gauges; one button while it is not used. */
export function lineFillLines(form: TransferForm, units: UsualUnits, errors: ReadonlyMap<string, string>, act: (action: TransferAction) => void): readonly MoreLine[] {
  const t = words.transfer
  const toggle = (
    <button type="button" className="line-fill-toggle" onClick={() => act({ do: 'use-line-fill', used: !form.lineFill.used })}>
      {form.lineFill.used ? t.dropLineFill : t.addLineFill}
    </button>
  )
  if (!form.lineFill.used) return [{ key: 'line-fill', head: toggle, cell: () => null }]
  const line = (field: LineFillField, head: MoreLine['head']): MoreLine => ({
    key: field, head,
    cell: (column) => {
      const gauge: GaugeName = column === 'closing' ? 'closing' : 'opening'
      const id = `lineFill.${gauge}.${field}` as const
      const value = form.lineFill[gauge][field]
      const write = (next: string): void => act({ do: 'write-line-fill', gauge, field, value: next })
      const kind = field === 'volume' ? 'volume' : 'temperature'
      const complete = (): void => {
        const full = withUsualUnit(value, kind, units)
        if (full !== value) write(full)
      }
      return <TextField id={id} label={t.fields[id]} labelHidden measured value={value} onChange={write} onBlur={complete} placeholder={units[kind]} error={errors.get(id)} />
    },
  })
  const name: MoreLine = {
    key: 'line', head: t.lineName,
    cell: (column) => column === 'closing' ? null : <TextField id="lineFill.line" label={t.fields['lineFill.line']} labelHidden value={form.lineFill.line} placeholder={t.lineNameHint} onChange={(value) => act({ do: 'name-line', value })} error={errors.get('lineFill.line')} />,
  }
  return [line('volume', t.lineFill), line('temperature', t.lineFillAt), name, { key: 'drop', head: toggle, cell: () => null }]
}
