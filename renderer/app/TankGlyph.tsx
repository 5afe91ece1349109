import type { ReactNode } from 'react'
import type { Tank } from '../../core/tank/index.ts'

interface TankGlyphProps {
  readonly roof: Tank['roof']['kind']
  readonly insulated: boolean
  /** Shares of the tank's height, 0 to 1. */
  readonly liquid: number
  readonly water: number
}

const FLOOR = 38
const TOP = 10
const HEIGHT = FLOOR - TOP

/** A tank the size of a thumb: kind of roof, insulation as a second wall, product and water to their last level. */
export function TankGlyph({ roof, insulated, liquid, water }: TankGlyphProps): ReactNode {
  const surface = FLOOR - HEIGHT * Math.min(1, Math.max(0, liquid))
  const waterTop = water > 0 ? Math.min(FLOOR - HEIGHT * Math.min(1, water), FLOOR - 2) : FLOOR
  const open = roof === 'external-floating'
  return (
    <svg viewBox="0 0 44 42" className="glyph" aria-hidden="true">
      <rect x="5" y={surface} width="34" height={Math.max(0, FLOOR - surface)} fill="var(--product)" />
      <rect x="5" y={waterTop} width="34" height={FLOOR - waterTop} fill="var(--water)" />
      {insulated && <path d={`M2.5 ${TOP - 1}V${FLOOR} M41.5 ${TOP - 1}V${FLOOR}`} className="glyph-line" />}
      <path d={`M5 ${TOP}V${FLOOR}H39V${TOP}`} className="glyph-line" />
      {!open && <path d={`M4 ${TOP} L22 4 L40 ${TOP} Z`} className="glyph-line" />}
      {roof !== 'none' && <path d={`M6.5 ${surface - 1.5}H37.5`} className="glyph-roof" />}
      {open && <path d={`M3 ${TOP}H7 M37 ${TOP}H41`} className="glyph-line" />}
    </svg>
  )
}
