import type { ReactNode } from 'react'
import type { Tank, TankShape } from '../../core/tank/index.ts'
import { band, grown, outline, roundVessel, stand, type RoundShape } from '../gauge/picture-vessel.ts'

interface TankGlyphProps {
  readonly shape: TankShape
  readonly roof: Tank['roof']['kind']
  readonly insulated: boolean
  /** Shares of the tank's height, 0 to 1. */
  readonly liquid: number
  readonly water: number
}

const FLOOR = 38
const TOP = 10
const HEIGHT = FLOOR - TOP

/** A tank the size of a thumb: shape, kind of roof, insulation as a second wall, product and water to their last level. */
export function TankGlyph({ shape, roof, insulated, liquid, water }: TankGlyphProps): ReactNode {
  return (
    <svg viewBox="0 0 44 42" className="glyph" aria-hidden="true">
      {shape === 'upright-cylinder' ? <Upright roof={roof} insulated={insulated} liquid={liquid} water={water} /> : <Round shape={shape} insulated={insulated} liquid={liquid} water={water} />}
    </svg>
  )
}

const ROUND = { sphere: { left: 7, right: 37, floor: 35 }, 'horizontal-cylinder': { left: 4, right: 40, floor: 34 } }

/** A sphere on legs or a cylinder on saddles. */
function Round({ shape, insulated, liquid, water }: { readonly shape: RoundShape } & Pick<TankGlyphProps, 'insulated' | 'liquid' | 'water'>): ReactNode {
  const { left, right, floor } = ROUND[shape]
  const vessel = roundVessel(shape, left, right, floor)
  const yOf = (share: number): number => floor - share * (floor - vessel.crown)
  return (
    <>
      <path d={stand(shape, vessel, 40)} className="glyph-line" />
      {liquid > 0 && <path d={band(vessel, yOf(liquid), floor)} fill="var(--product)" />}
      {water > 0 && <path d={band(vessel, Math.min(yOf(water), floor - 2), floor)} fill="var(--water)" />}
      {insulated && <path d={outline(grown(vessel, 2.5))} className="glyph-line" />}
      <path d={outline(vessel)} className="glyph-line" />
    </>
  )
}

function Upright({ roof, insulated, liquid, water }: Omit<TankGlyphProps, 'shape'>): ReactNode {
  const surface = FLOOR - HEIGHT * Math.min(1, Math.max(0, liquid))
  const waterTop = water > 0 ? Math.min(FLOOR - HEIGHT * Math.min(1, water), FLOOR - 2) : FLOOR
  const open = roof === 'external-floating'
  return (
    <>
      <rect x="5" y={surface} width="34" height={Math.max(0, FLOOR - surface)} fill="var(--product)" />
      <rect x="5" y={waterTop} width="34" height={FLOOR - waterTop} fill="var(--water)" />
      {insulated && <path d={`M2.5 ${TOP - 1}V${FLOOR} M41.5 ${TOP - 1}V${FLOOR}`} className="glyph-line" />}
      <path d={`M5 ${TOP}V${FLOOR}H39V${TOP}`} className="glyph-line" />
      {!open && <path d={`M4 ${TOP} L22 4 L40 ${TOP} Z`} className="glyph-line" />}
      {roof !== 'none' && <path d={`M6.5 ${surface - 1.5}H37.5`} className="glyph-roof" />}
      {open && <path d={`M3 ${TOP}H7 M37 ${TOP}H41`} className="glyph-line" />}
    </>
  )
}
