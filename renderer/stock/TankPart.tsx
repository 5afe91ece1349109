import type { ReactNode } from 'react'
import { useZone, type TerminalNow } from '../app/TerminalContext.tsx'
import { GaugeSheet } from '../gauge/GaugeSheet.tsx'
import { usualUnits } from '../gauge/usual-units.ts'
import { Button } from '../parts/Button.tsx'
import { SelectField } from '../parts/Field.tsx'
import { words } from '../words/en.ts'
import { columnOf } from './compute-stock.ts'
import { sidesOf, type GaugeSide, type StockAction, type StockForm } from './stock-form.ts'

interface TankPartProps { readonly form: StockForm; readonly at: number; readonly now: TerminalNow; readonly errors: ReadonlyMap<string, string>; readonly act: (action: StockAction) => void }

/** One tank of a movement: which it is, and its gauges. */
export function TankPart({ form, at, now, errors, act }: TankPartProps): ReactNode {
  const t = words.stock
  const zone = useZone()
  const one = form.tanks[at]
  if (one === undefined) return null
  const tank = now.tanks.find(({ code }) => code === one.tank)
  const product = now.products.find(({ code }) => code === one.product)
  const columns = sidesOf(form.kind).map((side) => ({ id: columnOf(form, at, side), side, title: form.kind === 'regrade' ? words.gauge.columns.gauge : words.gauge.columns[side], form: one[side] }))
  const sideOf = (column: string): GaugeSide => (column.endsWith('.closing') ? 'closing' : 'opening')
  const component = form.kind === 'blend' && at < form.tanks.length - 1
  return (
    <section className="stock-tank" aria-label={`${t.tankRole(form.kind, at, form.tanks.length)} ${one.tank}`}>
      <div className="stock-tank-head">
        <SelectField id={`tank-${at}`} label={t.tankRole(form.kind, at, form.tanks.length)} value={one.tank} placeholder={t.choose} error={errors.get(`tank-${at}`)}
          choices={now.tanks.map(({ code, name }) => ({ value: code, label: `${code}  ${name}` }))}
          onChange={(code) => act({ do: 'choose-tank', at, tank: code, product: now.tanks.find((other) => other.code === code)?.product ?? '' })} />
        {product && <span className="quiet stock-holds">{t.product(`${product.code}, ${product.name}`)}</span>}
        {component && form.tanks.length > 2 && <Button onClick={() => act({ do: 'drop-tank', at })}>{t.dropTank}</Button>}
      </div>
      {tank && (
        <GaugeSheet columns={columns} units={usualUnits(tank, product)} zone={zone} errors={errors}
          onEdit={(column, field, value) => act({ do: 'write-gauge', at, side: sideOf(column), field, value })}
          onAdd={(column, list) => act({ do: 'add-line', at, side: sideOf(column), list })}
          onDrop={(column, list, place) => act({ do: 'drop-line', at, side: sideOf(column), list, place })} />
      )}
    </section>
  )
}
