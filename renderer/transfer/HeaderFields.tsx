import type { ReactNode } from 'react'
import type { TerminalNow } from '../app/TerminalContext.tsx'
import { enterMovesOn, SelectField, TextField } from '../parts/Field.tsx'
import { words } from '../words/en.ts'
import type { HeaderField, TransferAction, TransferForm } from './transfer-form.ts'

interface HeaderFieldsProps {
  readonly form: TransferForm
  readonly now: TerminalNow
  readonly errors: ReadonlyMap<string, string>
  readonly act: (action: TransferAction) => void
}

const KINDS = (['receipt', 'delivery'] as const).map((value) => ({ value, label: words.transfer.kinds[value] }))

/** What is moved, where, between whom. Choosing a tank chooses the product it is in service for. */
export function HeaderFields({ form, now, errors, act }: HeaderFieldsProps): ReactNode {
  const t = words.transfer
  const shared = (id: 'kind' | 'tank' | HeaderField): { id: string; label: string; error: string | undefined; value: string } => ({ id, label: t.fields[id], error: errors.get(id), value: form[id] })
  const write = (field: HeaderField) => (value: string) => act({ do: 'write', field, value })
  const coded = (rows: readonly { readonly code: string; readonly name: string }[]): { value: string; label: string }[] => rows.map(({ code, name }) => ({ value: code, label: `${code}  ${name}` }))
  const chooseTank = (tank: string): void => act({ do: 'choose-tank', tank, product: now.tanks.find(({ code }) => code === tank)?.product ?? form.product })
  return (
    <div className="transfer-header" onKeyDown={enterMovesOn}>
      <SelectField {...shared('kind')} choices={KINDS} onChange={(kind) => act({ do: 'choose-kind', kind: kind === 'delivery' ? 'delivery' : 'receipt' })} />
      <SelectField {...shared('tank')} choices={coded(now.tanks)} placeholder={t.choose} onChange={chooseTank} />
      <SelectField {...shared('product')} choices={coded(now.products)} placeholder={t.choose} onChange={write('product')} />
      <SelectField {...shared('from')} choices={coded(now.parties)} placeholder={t.choose} onChange={write('from')} />
      <SelectField {...shared('to')} choices={coded(now.parties)} placeholder={t.choose} onChange={write('to')} />
      <TextField {...shared('reference')} onChange={write('reference')} />
      <TextField {...shared('remarks')} onChange={write('remarks')} />
    </div>
  )
}
