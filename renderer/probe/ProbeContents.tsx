import type { ReactNode } from 'react'
import { profilePoints } from '../../core/chart/index.ts'
import type { ProbeProfile } from '../../core/gauge/index.ts'
import { band, chord, outline, type VesselFrame } from '../gauge/picture-vessel.ts'
import { words } from '../words/en.ts'

interface ProbeContentsProps {
  readonly profile: ProbeProfile
  /** Reference gauge height [m]. */
  readonly metres: number
  readonly frame: VesselFrame
  readonly pipe: { readonly x: number; readonly top: number }
  /** Between which the density is drawn; the temperature stands a little to the right. */
  readonly lines: readonly [left: number, right: number]
}

/** What a probe makes out in a tank of any shape: liquid, water and strata from wall to wall, the modules on their pipe, and two lines. */
export function ProbeContents({ profile, metres, frame: { vessel, ground, yOf }, pipe, lines: [left, right] }: ProbeContentsProps): ReactNode {
  const { density, temperature, level, water } = profilePoints(profile)
  const y = (height: number): number => yOf(height / metres)
  const across = (at: number): string => { const [from, to] = chord(vessel, at); return `M${from} ${at}H${to}` }
  const lit = density.map(([rho]) => rho)
  const x = placed(lit, left, right)
  const warm = placed(temperature.map(([t]) => t), left + 12, right + 24)
  // never thinner than can be seen
  const waterTop = water === undefined || water <= 0 ? vessel.floor : Math.min(y(water), vessel.floor - 3)
  const below = Math.max(ground, vessel.floor)
  const [, wall] = chord(vessel, y(level))
  const round = vessel.end > 0
  return (
    <g>
      <path d={band(vessel, y(level), vessel.floor)} className="picture-product" />
      {waterTop < vessel.floor && <path d={band(vessel, waterTop, vessel.floor)} className="picture-water" />}
      {profile.strata.slice(1).map(({ from }) => <path key={from.value} d={across(y(Number(from.value) / 1000))} className="probe-stratum" />)}
      <path d={across(y(level))} className="picture-level" />
      {round
        ? <><path d={`M${wall} ${y(level)}H${vessel.right + 8}V${pipe.top + 2}`} className="picture-thin" /><text x={vessel.right + 8} y={pipe.top - 2} textAnchor="end" className="picture-text">{profile.level.value} mm</text></>
        : <text x={vessel.right - 4} y={y(level) - 6} textAnchor="end" className="picture-text">{profile.level.value} mm</text>}
      <path d={`M${pipe.x} ${pipe.top}V${vessel.floor}`} className="picture-thin" />
      {profile.modules.map(({ name, height, covered }) => (
        <g key={name}>
          <circle cx={pipe.x} cy={y(Number(height.value) / 1000)} r="3.5" className={covered ? 'picture-spot' : 'picture-spot picture-hollow'} />
          <text x={pipe.x + (round ? -6 : 6)} y={y(Number(height.value) / 1000) + 4} textAnchor={round ? 'end' : 'start'} className="picture-small">{name}</text>
        </g>
      ))}
      <clipPath id="probe-wall"><path d={outline(vessel)} /></clipPath>
      <g clipPath="url(#probe-wall)">
        <polyline points={density.map(([rho, h]) => `${x(rho)},${y(h)}`).join(' ')} className="probe-density" />
        <polyline points={temperature.map(([t, h]) => `${warm(t)},${y(h)}`).join(' ')} className="probe-temperature" />
      </g>
      <Ends values={lit} at={x} unit={words.probe.axisDensity} y={below + 13} className="probe-density-text" />
      <Ends values={temperature.map(([t]) => t)} at={warm} unit={words.probe.axisTemperature} y={below + 26} className="probe-temperature-text" />
    </g>
  )
}

/** Least and greatest figure below the tank, where the line has them; as one text where there is no room for two. */
function Ends({ values, at, unit, y, className }: { readonly values: readonly number[]; readonly at: (value: number) => number; readonly unit: string; readonly y: number; readonly className: string }): ReactNode {
  const [low, high] = [Math.min(...values), Math.max(...values)]
  const narrow = at(high) - at(low) < 60
  const both = high !== low && !narrow
  const written = high !== low && narrow ? `${low} … ${high}` : String(high)
  return (
    <>
      {both && <text x={at(low)} y={y} textAnchor="middle" className={`picture-small ${className}`}>{low}</text>}
      <text x={high === low ? at(low) : narrow ? (at(low) + at(high)) / 2 : at(high)} y={y} textAnchor="middle" className={`picture-small ${className}`}>{written} {unit}</text>
    </>
  )
}

/** Places figures between two ends of the picture; all alike stand in the middle. */
function placed(values: readonly number[], left: number, right: number): (value: number) => number {
  const [low, high] = [Math.min(...values), Math.max(...values)]
  return (value) => (high === low ? (left + right) / 2 : left + ((value - low) / (high - low)) * (right - left))
}
