import type { ReactNode } from 'react'
import { useZone, type TerminalNow } from '../app/TerminalContext.tsx'
import { usualUnits, withUsualUnit, type WrittenKind } from '../gauge/usual-units.ts'
import { SelectField, TextField } from '../parts/Field.tsx'
import { words } from '../words/en.ts'
import type { LineField, LineForm, StockAction } from './stock-form.ts'

interface LineFieldsProps { readonly line: LineForm; readonly now: TerminalNow; readonly errors: ReadonlyMap<string, string>; readonly act: (action: StockAction) => void }

const FIELDS: { readonly [B in LineForm['by']]: readonly LineField[] } = { net: ['at', 'net'], observed: ['at', 'volume', 'temperature', 'density', 'sedimentAndWater'] }
const KINDS: { readonly [F in LineField]: WrittenKind } = { at: 'words', net: 'volume', volume: 'volume', temperature: 'temperature', density: 'density', sedimentAndWater: 'share' }

/** What stood in a line before and after, on an account of its own. */
export function LineFields({ line, now, errors, act }: LineFieldsProps): ReactNode {
  const t = words.stock
  const zone = useZone()
  const units = usualUnits(undefined, now.products.find(({ code }) => code === line.product))
  const products = now.products.map(({ code, name }) => ({ value: code, label: `${code}  ${name}` }))
  return (
    <fieldset className="stock-line">
      <legend>{t.lineTitle}</legend>
      <div className="stock-row">
        <TextField id="line.code" label={t.fields['line.code']} value={line.code} placeholder="JETTY-1" onChange={(value) => act({ do: 'set-line', field: 'code', value })} error={errors.get('line.code')} />
        <SelectField id="line.product" label={t.fields['line.product']} value={line.product} placeholder={t.choose} choices={products} onChange={(value) => act({ do: 'set-line', field: 'product', value })} error={errors.get('line.product')} />
        <SelectField id="line.by" label={t.fields['line.by']} value={line.by} choices={(['net', 'observed'] as const).map((value) => ({ value, label: t.lineBy[value] }))} onChange={(value) => act({ do: 'set-line', field: 'by', value: value === 'observed' ? 'observed' : 'net' })} />
      </div>
      <div className="stock-contents">
        <span className="quiet">{zone}</span><strong>{t.lineBefore}</strong><strong>{t.lineAfter}</strong>
        {FIELDS[line.by].map((field) => (
          <ContentsRow key={field} field={field}>
            {(['opening', 'closing'] as const).map((side) => {
              const id = `line.${side}.${field}` as const
              const value = line[side][field]
              const write = (next: string): void => act({ do: 'write-line', side, field, value: next })
              const complete = (): void => { const full = withUsualUnit(value, KINDS[field], units); if (full !== value) write(full) }
              return <TextField key={id} id={id} label={t.fields[id]} labelHidden measured={field !== 'at'} value={value} placeholder={field === 'at' ? words.gauge.timeHint : units[KINDS[field] as keyof typeof units]} onChange={write} onBlur={complete} error={errors.get(id)} />
            })}
          </ContentsRow>
        ))}
      </div>
    </fieldset>
  )
}

function ContentsRow({ field, children }: { readonly field: LineField; readonly children: ReactNode }): ReactNode {
  return <><span className="quiet">{words.stock.lineHeads[field]}</span>{children}</>
}
