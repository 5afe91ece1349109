import type { ReactNode } from 'react'
import { STOCK_MOVEMENTS } from '../../core/transfer/index.ts'
import type { TerminalNow } from '../app/TerminalContext.tsx'
import { usualUnits, withUsualUnit } from '../gauge/usual-units.ts'
import { EnteredByField } from '../parts/EnteredByField.tsx'
import { enterMovesOn, SelectField, TextField } from '../parts/Field.tsx'
import { words } from '../words/en.ts'
import type { StockAction, StockField, StockForm } from './stock-form.ts'

interface StockHeaderProps { readonly form: StockForm; readonly now: TerminalNow; readonly errors: ReadonlyMap<string, string>; readonly act: (action: StockAction) => void }

/** What kind of movement it is, why, and what a kind has to say beside its gauges. */
export function StockHeader({ form, now, errors, act }: StockHeaderProps): ReactNode {
  const t = words.stock
  const write = (field: StockField) => (value: string): void => act({ do: 'write', field, value })
  const shared = (id: StockField): { id: string; label: string; value: string; error: string | undefined; onChange: (value: string) => void } => ({ id, label: t.fields[id], value: form[id], error: errors.get(id), onChange: write(id) })
  const tank = now.tanks.find(({ code }) => code === form.tanks[0]?.tank)
  const units = usualUnits(tank, now.products.find(({ code }) => code === (form.kind === 'regrade' ? form.toProduct : form.tanks[0]?.product)))
  const complete = (field: 'netOil' | 'toDensity', kind: 'volume' | 'density') => (): void => {
    const full = withUsualUnit(form[field], kind, units)
    if (full !== form[field]) write(field)(full)
  }
  return (
    <div className="stock-header" onKeyDown={enterMovesOn}>
      <SelectField id="kind" label={t.kind} value={form.kind} choices={STOCK_MOVEMENTS.map((value) => ({ value, label: t.kinds[value] }))}
        onChange={(kind) => act({ do: 'choose-kind', kind: STOCK_MOVEMENTS.find((known) => known === kind) ?? form.kind })} />
      {form.kind === 'regrade' && <SelectField {...shared('toProduct')} placeholder={t.choose} choices={now.products.map(({ code, name }) => ({ value: code, label: `${code}  ${name}` }))} />}
      {form.kind === 'regrade' && <TextField {...shared('toDensity')} measured placeholder={units.density} onBlur={complete('toDensity', 'density')} />}
      {form.kind === 'water-draw-off' && <TextField {...shared('netOil')} measured placeholder={`0 ${units.volume}`} onBlur={complete('netOil', 'volume')} />}
      <TextField {...shared('reason')} />
      <TextField {...shared('reference')} />
      <EnteredByField {...shared('enteredBy')} />
    </div>
  )
}
