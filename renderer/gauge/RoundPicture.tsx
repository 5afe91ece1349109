import type { ReactNode } from 'react'
import type { Tank } from '../../core/tank/index.ts'
import { words } from '../words/en.ts'
import type { GaugeForm } from './gauge-form.ts'
import { ROUND, roundFrame, writtenLevel, type PictureLevels } from './picture-levels.ts'
import { band, chord, grown, outline, stand, type RoundShape, type VesselFrame } from './picture-vessel.ts'
import { TemperatureProfile } from './TemperatureProfile.tsx'

interface DrawnColumn { readonly id: string; readonly form: GaugeForm; readonly levels: PictureLevels }

const { left: LEFT, right: RIGHT, ground: GROUND } = ROUND
/** Where the reference gauge height is drawn, and how far level texts stand above what it reaches. */
const MEASURE = 200
const ABOVE = 14

interface RoundPictureProps {
  readonly tank: Tank
  readonly shape: RoundShape
  readonly columns: readonly DrawnColumn[]
  readonly liquid: number
  readonly water: number
  readonly waterLabel: string
}

/** A sphere or lying cylinder in section: what it holds within its wall, the levels written above it. */
export function RoundPicture({ tank, shape, columns, liquid, water, waterLabel }: RoundPictureProps): ReactNode {
  const frame = roundFrame(tank, shape)
  const { vessel, yOf } = frame
  const middle = (LEFT + RIGHT) / 2
  const hatch = Math.min(yOf(1), vessel.crown - 6)
  const level = columns.flatMap(({ levels }) => levels.liquid ?? [])
  const written = hatch - ABOVE
  const waterTop = waterHeight(frame, water)
  return (
    <g>
      <path d={stand(shape, vessel, GROUND)} className="picture-shell" />
      <path d={`M${LEFT - 12} ${GROUND}H${MEASURE + 5}`} className="picture-thin" />
      <path d={outline(vessel)} className="picture-hollow" />
      {liquid > 0 && <path d={band(vessel, yOf(liquid), vessel.floor)} className="picture-product" />}
      {level.length > 1 && <path d={band(vessel, yOf(Math.max(...level)), yOf(Math.min(...level)))} fill="url(#moved-hatch)" className="picture-between" />}
      {waterTop < vessel.floor && <path d={band(vessel, waterTop, vessel.floor)} className="picture-water" />}
      {tank.insulated && <path d={outline(grown(vessel, 4))} className="picture-thin" />}
      <path d={outline(vessel)} className="picture-shell" />
      <path d={`M${middle - 5} ${vessel.crown}V${hatch}M${middle + 5} ${vessel.crown}V${hatch}M${middle - 8} ${hatch}H${middle + 8}`} className="picture-shell" />
      <path d={`M${MEASURE} ${written - 22}V${vessel.floor} M${MEASURE - 4} ${yOf(1)}H${MEASURE + 4} M${middle} ${vessel.floor}H${MEASURE + 4}`} className="picture-thin" />
      <text x={MEASURE + 5} y={written - 27} textAnchor="end" className="picture-text">{tank.referenceGaugeHeight}</text>
      <text x={MEASURE + 16} y={(yOf(1) + vessel.floor) / 2} transform={`rotate(-90 ${MEASURE + 16} ${(yOf(1) + vessel.floor) / 2})`} textAnchor="middle" className="picture-small">{words.gauge.picture.reference}</text>
      <text x={middle} y={vessel.floor + (tank.insulated ? 15 : 12)} textAnchor="middle" className="picture-small">{words.gauge.picture.datum}</text>
      <text x={LEFT - 8} y={GROUND + 14} className="picture-small">{waterLabel}</text>
      {columns.map((column, i) => <RoundMarks key={column.id} column={column} frame={frame} atEnd={i > 0} dashed={i === 0 && columns.length > 1} written={written} />)}
    </g>
  )
}

/** Where the top of the water stands: never thinner than can be seen. */
function waterHeight({ vessel, yOf }: VesselFrame, share: number): number {
  return share > 0 ? Math.min(yOf(share), vessel.floor - 3) : vessel.floor
}

function Across({ frame, y, className }: { readonly frame: VesselFrame; readonly y: number; readonly className: string }): ReactNode {
  const [left, right] = chord(frame.vessel, y)
  return <path d={`M${left} ${y}H${right}`} className={className} />
}

/** A level across the tank, led outside the wall up to where it is written, and the temperatures at their heights. */
function RoundMarks({ column: { id, form, levels }, frame, atEnd, dashed, written }: { readonly column: DrawnColumn; readonly frame: VesselFrame; readonly atEnd: boolean; readonly dashed: boolean; readonly written: number }): ReactNode {
  const title = words.gauge.columns[id as keyof typeof words.gauge.columns] ?? id
  const lead = atEnd ? RIGHT + 8 : LEFT - 8
  const anchor = atEnd ? 'end' : 'start'
  const middle = (LEFT + RIGHT) / 2
  const y = levels.liquid === undefined ? undefined : frame.yOf(levels.liquid)
  return (
    <g>
      {y !== undefined && (
        <>
          <Across frame={frame} y={y} className={dashed ? 'picture-level picture-dashed' : 'picture-level'} />
          <path d={`M${chord(frame.vessel, y)[atEnd ? 1 : 0]} ${y}H${lead}V${written + 4}`} className="picture-thin" />
          <text x={lead} y={written - 11} textAnchor={anchor} className="picture-small">{title}</text>
          <text x={lead} y={written} textAnchor={anchor} className="picture-text">{writtenLevel(form)}</text>
        </>
      )}
      {levels.water !== undefined && levels.water > 0 && <Across frame={frame} y={waterHeight(frame, levels.water)} className="picture-thin" />}
      <TemperatureProfile spots={levels.spots} x={atEnd ? middle + 5 : middle - 22} hollow={!atEnd} round={{ heightOf: frame.yOf, labels: atEnd ? 'right' : 'left' }} />
    </g>
  )
}
