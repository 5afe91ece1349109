import type { ProbeInput, ProbeProfile } from '../../core/gauge/index.ts'
import { probeProfile } from '../../core/gauge/index.ts'

/**
 * A hydrostatic probe's readings from physics alone, dp/dz = −ρ g; no code of core is used to make them:
 *   p(h) = ptop + ρv g (htop − L) + ∫ρ g dz from h to L;  in the vapour p(h) = ptop + ρv g (htop − h)
 */
export const G = 9.80665

/** A layer of liquid up to a height [m], with its density [kg/m³]. */
export interface Layer { readonly to: number; readonly rho: number }

/** A tank's contents and how the probe stands in them; lengths in m, pressures in Pa. */
export interface Contents {
  readonly layers: readonly Layer[]
  readonly level: number
  /** Above datum, lowest first; the last is in the vapour. */
  readonly heights: readonly number[]
  readonly rhoV?: number
  readonly pTop?: number
  /** Density of the air to which each module is vented at its own height. */
  readonly rhoA?: number
  /** Zero of the probe above datum. */
  readonly datumOffset?: number
  /** What each module reads too much, by its place. */
  readonly error?: (place: number) => number
  readonly temperature?: (height: number) => number
}

/** Absolute pressure at a height against that of the air at datum. */
export function pressureAt(h: number, { layers, level, heights, rhoV = 1.2, pTop = 200 }: Contents): number {
  const top = heights[heights.length - 1]!
  if (h >= level) return pTop + rhoV * G * (top - h)
  let p = pTop + rhoV * G * (top - level)
  let lower = 0
  for (const layer of layers) {
    const from = Math.max(lower, h)
    const to = Math.min(layer.to, level)
    if (to > from) p += layer.rho * G * (to - from)
    lower = layer.to
  }
  return p
}

/** A cylinder of 500 m² and 20 m: 0.5 m³ per mm, so that volumes are known by hand. */
export const CYLINDER: ProbeInput['capacityTable'] = {
  certificate: 'CAL-1', issuedBy: 'Calibration office', issuedOn: '2026-01-10', baseTemperature: '15 degC', volumeUnit: 'm3', levelUnit: 'mm',
  rows: [['0', '0'], ['10000', '5000'], ['20000', '10000']],
}

/** What the probe shows. Parts can be replaced. */
export function probeIn(contents: Contents, parts: Partial<ProbeInput> = {}): ProbeInput {
  const { heights, datumOffset = 0, rhoA = 0, error = () => 0, temperature = () => 20, rhoV = 1.2 } = contents
  return {
    modules: heights.map((h, i) => ({
      name: `M${i + 1}`, height: `${(h - datumOffset).toFixed(6)} m`, temperature: `${temperature(h).toFixed(3)} degC`,
      // a gauge pressure counts from the air outside, which is lighter by ρa g h at the module
      pressure: `${((pressureAt(h, contents) + rhoA * G * h + error(i)) / 1000).toFixed(8)} kPa`,
    })),
    gravity: `${G} m/s2`, vapourDensity: `${rhoV} kg/m3`, capacityTable: CYLINDER, pressureUncertainty: '0.010 kPa', zeroLimit: '0.030 kPa',
    ...(rhoA === 0 ? {} : { airDensity: `${rhoA} kg/m3` }), ...(datumOffset === 0 ? {} : { datumOffset: `${datumOffset.toFixed(6)} m` }), ...parts,
  }
}

export function profileOf(input: ProbeInput): ProbeProfile {
  const outcome = probeProfile(input)
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.findings))
  return outcome.value
}

/** Six modules, the highest in the vapour up to 19 m. */
export const SIX = [0.1, 3, 6, 9, 12, 19]
