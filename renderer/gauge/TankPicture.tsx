import type { ReactNode } from 'react'
import type { Tank } from '../../core/tank/index.ts'
import { words } from '../words/en.ts'
import type { GaugeForm } from './gauge-form.ts'
import { criticalZone, pictureLevels, writtenLevel, writtenWater, type PictureLevels } from './picture-levels.ts'
import { Insulation, Roof, FLOOR, LEFT, RIGHT, TOP, yOf, yOfWater } from './PictureShell.tsx'
import { RoundPicture } from './RoundPicture.tsx'
import { TemperatureProfile } from './TemperatureProfile.tsx'
import './picture.css'

interface PictureColumn { readonly id: string; readonly form: GaugeForm }

/** The tank in section with what the sheet says: levels, free water, temperature spots, critical zone. */
export function TankPicture({ tank, columns }: { readonly tank: Tank | undefined; readonly columns: readonly PictureColumn[] }): ReactNode {
  if (!tank) return <p className="picture-none quiet">{words.gauge.picture.noTank}</p>
  const drawn = columns.map(({ id, form }) => ({ id, form, levels: pictureLevels(form, tank) }))
  const last = drawn.findLast(({ levels }) => levels.liquid !== undefined)
  const water = drawn.findLast(({ levels }) => levels.water !== undefined)?.levels.water ?? 0
  const shape = tank.shape ?? 'upright-cylinder'
  return (
    <figure className="picture">
      <svg viewBox="0 0 224 440" preserveAspectRatio="xMidYMin meet" role="img" aria-label={words.gauge.picture.label(tank.code)}>
        <defs>
          <pattern id="zone-hatch" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path d="M0 0V6" stroke="var(--oxide)" strokeWidth="1.4" /></pattern>
          <pattern id="moved-hatch" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(-45)"><path d="M0 0V5" stroke="var(--product)" strokeWidth="1" /></pattern>
        </defs>
        {shape === 'upright-cylinder'
          ? <Upright tank={tank} drawn={drawn} surface={last?.levels.liquid} water={water} />
          : <RoundPicture tank={tank} shape={shape} columns={drawn} liquid={last?.levels.liquid ?? 0} water={water} waterLabel={waterLabel(drawn)} />}
      </svg>
      <figcaption>
        <strong>{tank.code}</strong> {tank.name}, {shape === 'upright-cylinder' ? words.gauge.roofs[tank.roof.kind] : words.tables.shapes[shape]}{tank.insulated && `, ${words.gauge.insulated}`}
        <br /><span className="quiet">{words.gauge.picture.certificate(tank.capacityTable.certificate)} <span className="picture-date">{tank.capacityTable.issuedOn}</span><br />{tank.datum}</span>
      </figcaption>
    </figure>
  )
}

type Drawn = readonly { readonly id: string; readonly form: GaugeForm; readonly levels: PictureLevels }[]

function Upright({ tank, drawn, surface, water }: { readonly tank: Tank; readonly drawn: Drawn; readonly surface: number | undefined; readonly water: number }): ReactNode {
  const liquid = surface ?? 0
  const zone = criticalZone(tank)
  return (
    <>
      <rect x={LEFT} width={RIGHT - LEFT} y={yOf(liquid)} height={FLOOR - yOf(liquid)} className="picture-product" />
      <Between drawn={drawn} />
      <rect x={LEFT} width={RIGHT - LEFT} y={yOfWater(water)} height={FLOOR - yOfWater(water)} className="picture-water" />
      {zone && (
        <g>
          <rect x={LEFT} width={RIGHT - LEFT} y={yOf(zone.to)} height={yOf(zone.from) - yOf(zone.to)} fill="url(#zone-hatch)" opacity="0.55" />
          <text x={LEFT - 4} y={(yOf(zone.to) + yOf(zone.from)) / 2} transform={`rotate(-90 ${LEFT - 4} ${(yOf(zone.to) + yOf(zone.from)) / 2})`} textAnchor="middle" className="picture-small">{words.gauge.picture.critical}</text>
        </g>
      )}
      {tank.insulated && <Insulation />}
      <path d={`M${LEFT} ${TOP}V${FLOOR}H${RIGHT}V${TOP}`} className="picture-shell" />
      <Roof kind={tank.roof.kind} surface={surface} />
      <path d={`M${RIGHT + 8} 19V${FLOOR} M${RIGHT + 3} ${yOf(1)}H${RIGHT + 13} M${RIGHT + 3} ${FLOOR}H${RIGHT + 13}`} className="picture-thin" />
      <text x={RIGHT + 13} y={14} textAnchor="end" className="picture-text">{tank.referenceGaugeHeight}</text>
      <text x={RIGHT + 22} y={(yOf(1) + FLOOR) / 2} transform={`rotate(-90 ${RIGHT + 22} ${(yOf(1) + FLOOR) / 2})`} textAnchor="middle" className="picture-small">{words.gauge.picture.reference}</text>
      <text x={RIGHT + 13} y={FLOOR + 13} textAnchor="end" className="picture-small">{words.gauge.picture.datum}</text>
      <text x={LEFT} y={FLOOR + 14} className="picture-small">{waterLabel(drawn)}</text>
      {drawn.map(({ id, form, levels }, i) => <Marks key={id} id={id} form={form} levels={levels} atEnd={i > 0} dashed={i === 0 && drawn.length > 1} lift={tank.roof.kind === 'none' ? 5 : 10} />)}
    </>
  )
}

function waterLabel(drawn: Drawn): string {
  const cuts = drawn.filter(({ levels }) => levels.water !== undefined).map(({ form }) => writtenWater(form))
  return cuts.length === 0 ? '' : `${words.gauge.picture.water} ${[...new Set(cuts)].join(', ')}`
}

/** What stands between two levels: the product that came or went. */
function Between({ drawn }: { readonly drawn: Drawn }): ReactNode {
  const [opening, closing] = drawn.map(({ levels }) => levels.liquid)
  if (opening === undefined || closing === undefined) return null
  const [high, low] = [Math.max(opening, closing), Math.min(opening, closing)]
  return <rect x={LEFT} width={RIGHT - LEFT} y={yOf(high)} height={yOf(low) - yOf(high)} fill="url(#moved-hatch)" className="picture-between" />
}

function Marks({ id, form, levels, atEnd, dashed, lift }: { readonly id: string; readonly form: GaugeForm; readonly levels: PictureLevels; readonly atEnd: boolean; readonly dashed: boolean; readonly lift: number }): ReactNode {
  const title = words.gauge.columns[id as keyof typeof words.gauge.columns] ?? id
  const x = atEnd ? RIGHT - 5 : LEFT + 5
  const anchor = atEnd ? 'end' : 'start'
  const spotX = atEnd ? (LEFT + RIGHT) / 2 + 8 : LEFT + 14
  return (
    <g>
      {levels.liquid !== undefined && (
        <>
          <path d={`M${LEFT} ${yOf(levels.liquid)}H${RIGHT}`} className={dashed ? 'picture-level picture-dashed' : 'picture-level'} />
          <text x={x} y={yOf(levels.liquid) - lift - 11} textAnchor={anchor} className="picture-small">{title}</text>
          <text x={x} y={yOf(levels.liquid) - lift} textAnchor={anchor} className="picture-text">{writtenLevel(form)}</text>
        </>
      )}
      {levels.water !== undefined && levels.water > 0 && (
        <>
          <path d={`M${LEFT} ${yOfWater(levels.water)}H${RIGHT}`} className="picture-thin" />
        </>
      )}
      <TemperatureProfile spots={levels.spots} x={spotX} hollow={!atEnd} />
    </g>
  )
}
