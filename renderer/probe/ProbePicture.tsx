import type { ReactNode } from 'react'
import type { ProbeProfile } from '../../core/gauge/index.ts'
import type { Tank } from '../../core/tank/index.ts'
import { millimetres, parseLength } from '../../core/units/index.ts'
import '../gauge/picture.css'
import { ROUND, roundFrame } from '../gauge/picture-levels.ts'
import { grown, outline, stand, type RoundShape, type VesselFrame } from '../gauge/picture-vessel.ts'
import { FLOOR, Insulation, LEFT, RIGHT, Roof, TOP, yOf } from '../gauge/PictureShell.tsx'
import { words } from '../words/en.ts'
import { ProbeContents } from './ProbeContents.tsx'
import './probe.css'

const UPRIGHT: VesselFrame = { vessel: { left: LEFT, right: RIGHT, crown: TOP, floor: FLOOR, end: 0 }, ground: FLOOR, yOf }

/** The tank in section with its probe: strata, water, modules, and the density and temperature of the strata as lines. */
export function ProbePicture({ tank, profile }: { readonly tank: Tank; readonly profile: ProbeProfile | undefined }): ReactNode {
  const height = parseLength(tank.referenceGaugeHeight, '')
  const metres = height.ok ? millimetres(height.value).toNumber() / 1000 : undefined
  const shape = tank.shape ?? 'upright-cylinder'
  const drawn = profile !== undefined && metres !== undefined ? { profile, metres } : undefined
  return (
    <figure className="picture">
      <svg viewBox="0 0 224 440" preserveAspectRatio="xMidYMin meet" role="img" aria-label={words.probe.drawing(tank.code)}>
        {shape === 'upright-cylinder' ? (
          <>
            {drawn && <ProbeContents {...drawn} frame={UPRIGHT} pipe={{ x: LEFT + 14, top: TOP - 6 }} lines={[LEFT + 42, RIGHT - 40]} />}
            {tank.insulated && <Insulation />}
            <path d={`M${LEFT} ${TOP}V${FLOOR}H${RIGHT}V${TOP}`} className="picture-shell" />
            <Roof kind={tank.roof.kind} surface={drawn && Number(drawn.profile.level.value) / 1000 / drawn.metres} />
          </>
        ) : <Round tank={tank} shape={shape} drawn={drawn} />}
      </svg>
      <figcaption><strong>{tank.code}</strong> {tank.name}, {shape === 'upright-cylinder' ? words.gauge.roofs[tank.roof.kind] : words.tables.shapes[shape]}<br /><span className="quiet">{tank.datum}</span></figcaption>
    </figure>
  )
}

/** A sphere or lying cylinder: the probe hangs in the middle, where it reaches the lowest point. */
function Round({ tank, shape, drawn }: { readonly tank: Tank; readonly shape: RoundShape; readonly drawn: { readonly profile: ProbeProfile; readonly metres: number } | undefined }): ReactNode {
  const frame = roundFrame(tank, shape)
  const { vessel, ground } = frame
  const middle = (vessel.left + vessel.right) / 2
  const hatch = Math.min(frame.yOf(1), vessel.crown - 6)
  return (
    <g>
      <path d={stand(shape, vessel, ground)} className="picture-shell" />
      <path d={`M${ROUND.left - 12} ${ground}H${ROUND.right + 12}`} className="picture-thin" />
      <path d={outline(vessel)} className="picture-hollow" />
      {drawn && <ProbeContents {...drawn} frame={frame} pipe={{ x: middle, top: hatch - 6 }} lines={[middle + 26, middle + 48]} />}
      {tank.insulated && <path d={outline(grown(vessel, 4))} className="picture-thin" />}
      <path d={outline(vessel)} className="picture-shell" />
      <path d={`M${middle - 5} ${vessel.crown}V${hatch}M${middle + 5} ${vessel.crown}V${hatch}M${middle - 8} ${hatch}H${middle + 8}`} className="picture-shell" />
    </g>
  )
}
