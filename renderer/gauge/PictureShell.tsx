import type { ReactNode } from 'react'
import type { Tank } from '../../core/tank/index.ts'

/** The picture's frame, in its own units. */
export const LEFT = 16
export const RIGHT = 192
export const FLOOR = 406
export const TOP = 52
const CREST = 22

/** Where a share of the reference gauge height stands. */
export function yOf(share: number): number {
  return FLOOR - share * (FLOOR - (TOP - 10))
}

/** Where the top of the water stands: never thinner than can be seen. */
export function yOfWater(share: number): number {
  return share > 0 ? Math.min(yOf(share), FLOOR - 3) : FLOOR
}

/** A second wall outside the first. */
export function Insulation(): ReactNode {
  return <path d={`M${LEFT - 5} ${TOP}V${FLOOR} M${RIGHT + 4} ${TOP}V${FLOOR}`} className="picture-thin" />
}

/** The roof by its kind; a floating one lies on the liquid, or near the floor while no level is known. */
export function Roof({ kind, surface }: { readonly kind: Tank['roof']['kind']; readonly surface: number | undefined }): ReactNode {
  const middle = (LEFT + RIGHT) / 2
  const cone = <path d={`M${LEFT - 3} ${TOP}L${middle} ${CREST}L${RIGHT + 3} ${TOP}Z`} className="picture-shell" />
  if (kind === 'none') return cone
  const y = yOf(surface ?? 0.06)
  return (
    <>
      {kind === 'internal-floating' ? cone : <path d={`M${LEFT - 5} ${TOP}H${LEFT + 5} M${RIGHT - 5} ${TOP}H${RIGHT + 5}`} className="picture-shell" />}
      <path d={`M${LEFT + 3} ${y - 5}H${RIGHT - 3}V${y + 3}H${RIGHT - 18}V${y}H${LEFT + 18}V${y + 3}H${LEFT + 3}Z`} className="picture-roof" />
    </>
  )
}
