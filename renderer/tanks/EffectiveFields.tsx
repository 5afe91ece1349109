import type { ReactNode } from 'react'
import { useZone } from '../app/TerminalContext.tsx'
import { EnteredByField } from '../parts/EnteredByField.tsx'
import { TextField } from '../parts/Field.tsx'
import { words } from '../words/en.ts'
import type { useEffective } from './use-effective.ts'

interface EffectiveFieldsProps { readonly effective: ReturnType<typeof useEffective>; readonly ids: { readonly from: string; readonly by: string }; readonly errors: ReadonlyMap<string, string> }

export function EffectiveFields({ effective, ids, errors }: EffectiveFieldsProps): ReactNode {
  const t = words.yard.tankForm
  const zone = useZone()
  return (
    <div className="sheet-row">
      <TextField id={ids.from} label={`${t.effectiveFrom}, ${zone}`} value={effective.typed} placeholder={words.yard.timeHint} onChange={effective.type} error={errors.get(ids.from) ?? effective.error} />
      <EnteredByField id={ids.by} label={t.by} value={effective.by} onChange={effective.setBy} error={errors.get(ids.by)} />
    </div>
  )
}
