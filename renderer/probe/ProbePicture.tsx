import type { ReactNode } from 'react'
import { profilePoints } from '../../core/chart/index.ts'
import type { ProbeProfile } from '../../core/gauge/index.ts'
import type { Tank } from '../../core/tank/index.ts'
import { millimetres, parseLength } from '../../core/units/index.ts'
import '../gauge/picture.css'
import { FLOOR, Insulation, LEFT, RIGHT, Roof, TOP, yOf, yOfWater } from '../gauge/PictureShell.tsx'
import { words } from '../words/en.ts'
import './probe.css'

const PIPE = LEFT + 14

/** The tank in section with its probe: strata, water, modules, and the density and temperature of the strata as lines. */
export function ProbePicture({ tank, profile }: { readonly tank: Tank; readonly profile: ProbeProfile | undefined }): ReactNode {
  const height = parseLength(tank.referenceGaugeHeight, '')
  const metres = height.ok ? millimetres(height.value).toNumber() / 1000 : undefined
  return (
    <figure className="picture">
      <svg viewBox="0 0 224 440" preserveAspectRatio="xMidYMin meet" role="img" aria-label={words.probe.drawing(tank.code)}>
        {profile && metres !== undefined && <Contents profile={profile} y={(m) => yOf(m / metres)} share={(m) => m / metres} />}
        {tank.insulated && <Insulation />}
        <path d={`M${LEFT} ${TOP}V${FLOOR}H${RIGHT}V${TOP}`} className="picture-shell" />
        <Roof kind={tank.roof.kind} surface={profile && metres !== undefined ? Number(profile.level.value) / 1000 / metres : undefined} />
      </svg>
      <figcaption><strong>{tank.code}</strong> {tank.name}, {words.gauge.roofs[tank.roof.kind]}<br /><span className="quiet">{tank.datum}</span></figcaption>
    </figure>
  )
}

function Contents({ profile, y, share }: { readonly profile: ProbeProfile; readonly y: (metres: number) => number; readonly share: (metres: number) => number }): ReactNode {
  const { density, temperature, level, water } = profilePoints(profile)
  const lit = density.map(([rho]) => rho)
  const x = across(lit, PIPE + 22, RIGHT - 40)
  const warm = across(temperature.map(([t]) => t), PIPE + 34, RIGHT - 16)
  return (
    <g>
      <rect x={LEFT} width={RIGHT - LEFT} y={y(level)} height={FLOOR - y(level)} className="picture-product" />
      {water !== undefined && <rect x={LEFT} width={RIGHT - LEFT} y={yOfWater(share(water))} height={FLOOR - yOfWater(share(water))} className="picture-water" />}
      {profile.strata.slice(1).map(({ from }) => <path key={from.value} d={`M${LEFT} ${y(Number(from.value) / 1000)}H${RIGHT}`} className="probe-stratum" />)}
      <path d={`M${LEFT} ${y(level)}H${RIGHT}`} className="picture-level" />
      <text x={RIGHT - 4} y={y(level) - 6} textAnchor="end" className="picture-text">{profile.level.value} mm</text>
      <path d={`M${PIPE} ${TOP - 6}V${FLOOR}`} className="picture-thin" />
      {profile.modules.map(({ name, height, covered }) => (
        <g key={name}>
          <circle cx={PIPE} cy={y(Number(height.value) / 1000)} r="3.5" className={covered ? 'picture-spot' : 'picture-spot picture-hollow'} />
          <text x={PIPE + 6} y={y(Number(height.value) / 1000) + 4} className="picture-small">{name}</text>
        </g>
      ))}
      <polyline points={density.map(([rho, h]) => `${x(rho)},${y(h)}`).join(' ')} className="probe-density" />
      <polyline points={temperature.map(([t, h]) => `${warm(t)},${y(h)}`).join(' ')} className="probe-temperature" />
      <Ends values={lit} at={x} unit={words.probe.axisDensity} y={FLOOR + 13} className="probe-density-text" />
      <Ends values={temperature.map(([t]) => t)} at={warm} unit={words.probe.axisTemperature} y={FLOOR + 26} className="probe-temperature-text" />
    </g>
  )
}

/** Least and greatest figure below the tank, where the line has them. */
function Ends({ values, at, unit, y, className }: { readonly values: readonly number[]; readonly at: (value: number) => number; readonly unit: string; readonly y: number; readonly className: string }): ReactNode {
  const [low, high] = [Math.min(...values), Math.max(...values)]
  const flat = high === low
  return (
    <>
      {!flat && <text x={at(low)} y={y} textAnchor="middle" className={`picture-small ${className}`}>{low}</text>}
      <text x={flat ? at(low) : at(high)} y={y} textAnchor="middle" className={`picture-small ${className}`}>{high} {unit}</text>
    </>
  )
}

/** Places figures between two ends of the picture; all alike stand in the middle. */
function across(values: readonly number[], left: number, right: number): (value: number) => number {
  const [low, high] = [Math.min(...values), Math.max(...values)]
  return (value) => (high === low ? (left + right) / 2 : left + ((value - low) / (high - low)) * (right - left))
}
