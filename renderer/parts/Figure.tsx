import type { ReactNode } from 'react'
import { printedUnit } from '../../core/units/index.ts'
import { figureDigits, signOf } from './figure-digits.ts'
import './figure.css'

interface FigureProps {
  /** Decimal text, already rounded; null or empty for a figure that is not there. */
  readonly value: string | null | undefined
  /** Unit word; empty for a factor. */
  readonly unit: string
  /** Decimals of the column, so that decimal signs stand under each other. */
  readonly decimals?: number
  /** A change: plus sign and the colour of gain or loss. */
  readonly signed?: boolean
  /** Hides the unit where the head of the column carries it; it is still read aloud. */
  readonly unitInHead?: boolean
  /** Opens the line of the worksheet it comes from. */
  readonly onOpen?: () => void
}

/** Every number of the window: tabular digits in threes, its unit, its sign. The text copied is the plain number. */
export function Figure({ value, unit, decimals, signed, unitInHead, onOpen }: FigureProps): ReactNode {
  if (value === null || value === undefined || value === '') return <span className="figure figure-absent">–</span>
  const { sign, groups, fraction } = figureDigits(value, signed)
  const missing = (decimals ?? 0) - fraction.length
  const tone = signed ? ` figure-${signOf(value)}` : ''
  const content = (
    <>
      {sign}
      {groups.map((group, i) => <span key={i} className="figure-group">{group}</span>)}
      {fraction !== '' && `.${fraction}`}
      {missing > 0 && <span className="figure-pad" aria-hidden="true">{fraction === '' ? '.' : ''}{'0'.repeat(missing)}</span>}
      {unit !== '' && <span className={unitInHead ? 'read-aloud' : 'figure-unit'}> {printedUnit(unit)}</span>}
    </>
  )
  return onOpen
    ? <button type="button" className={`figure${tone}`} onClick={onOpen}>{content}</button>
    : <span className={`figure${tone}`}>{content}</span>
}
