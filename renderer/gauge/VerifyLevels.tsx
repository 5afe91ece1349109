import type { ReactNode } from 'react'
import type { VerificationResult } from '../../core/gauge/index.ts'
import { printedUnit } from '../../core/units/index.ts'
import { Button } from '../parts/Button.tsx'
import { TextField } from '../parts/Field.tsx'
import { words } from '../words/en.ts'
import { nameOfVerifyField } from './place-verification.ts'
import { unitHint, withUsualUnit, type UsualUnits } from './usual-units.ts'
import type { Stage, VerifyAction, VerifyForm, VerifyPart } from './verify-form.ts'

interface VerifyLevelsProps {
  readonly stage: Stage
  readonly form: VerifyForm
  readonly result: VerificationResult['asFound'] | null | undefined
  readonly units: UsualUnits
  readonly errors: ReadonlyMap<string, string>
  readonly act: (action: VerifyAction) => void
}

/** The levels of one stage: what the gauge showed, what the tape said, and how far they are apart. */
export function VerifyLevels({ stage, form, result, units, errors, act }: VerifyLevelsProps): ReactNode {
  const t = words.gauge.verify
  const parts: readonly VerifyPart[] = ['automatic', 'hand.0', 'hand.1', 'hand.2', ...(form.handBy === 'ullage' ? ['referenceHeight' as const] : [])]
  return (
    <table className="verify-levels" aria-label={t.stages[stage]}>
      <thead>
        <tr>
          <th scope="col">{t.stages[stage]}</th>
          <th scope="col">{t.columns.automatic}</th>
          {[1, 2, 3].map((number) => <th key={number} scope="col">{t.handHead(form.handBy, number)}</th>)}
          {form.handBy === 'ullage' && <th scope="col">{t.columns.referenceHeight}</th>}
          <th scope="col" className="end">{t.columns.difference}</th>
          <th scope="col" className="end">{t.columns.limit}</th>
          <th scope="col"><span className="read-aloud">{t.dropHead}</span></th>
        </tr>
      </thead>
      <tbody>
        {form[stage].map((line, at) => {
          const point = result?.points[at]
          return (
            <tr key={at}>
              <th scope="row">{t.level(at + 1)}</th>
              {parts.map((part) => {
                const id = `verify.${stage}.${at}.${part}`
                const value = part === 'automatic' || part === 'referenceHeight' ? line[part] : (line.hand[Number(part.slice(-1))] ?? '')
                const write = (next: string): void => act({ do: 'write-line', stage, at, part, value: next })
                const complete = (): void => { const full = withUsualUnit(value, 'level', units); if (full !== value) write(full) }
                return <td key={part}><TextField id={id} label={nameOfVerifyField(id)} labelHidden measured value={value} error={errors.get(id)} placeholder={unitHint('level', units)} onChange={write} onBlur={complete} /></td>
              })}
              <td className={`end${point && !point.within ? ' verify-outside' : ''}`}>{point ? `${point.difference.value} ${printedUnit(point.difference.unit)}` : '–'}</td>
              <td className="end">{point ? `${point.limit.value} ${printedUnit(point.limit.unit)}` : '–'}</td>
              <td>{form[stage].length > 1 && <button type="button" className="verify-drop" aria-label={t.drop(t.stages[stage], at + 1)} onClick={() => act({ do: 'drop-level', stage, at })}>×</button>}</td>
            </tr>
          )
        })}
      </tbody>
      <tfoot><tr><td colSpan={parts.length + 4}><Button onClick={() => act({ do: 'add-level', stage })}>{t.addLevel}</Button></td></tr></tfoot>
    </table>
  )
}
