import { accepted, type Outcome } from '../refusal/index.ts'
import { COVERAGE } from './probe-limits.ts'
import { figuresOf, type ProbeFigures } from './probe-figures.ts'
import type { ProbeModule } from './probe-modules.ts'
import type { ProbeReading } from './probe-reading.ts'
import type { VolumeBelow } from './probe-strata.ts'

const OF = ['level', 'massFromTable', 'massFromHead', 'averageDensity'] as const
const PERHAPS = ['waterLevel', 'entrained'] as const

/** Expanded uncertainties, k = 2, each in the unit of its figure; undefined where the figure itself comes and goes. */
export type ProbeUncertainties = { readonly [F in (typeof OF)[number]]: number } & { readonly [F in (typeof PERHAPS)[number]]: number | undefined }

/**
 * Expanded uncertainties of a probe's figures from that of one pressure, all pressures independent: each pressure in turn is
 * changed by its uncertainty, everything is computed again, and the changes are added in squares. That one vapour module
 * stands against all others is in it.
 *   U(f) = 2 √ Σ [f(p_i + u) − f(p_i)]²
 * Nothing but the pressures is counted: gravity, heights, capacity table and what lies between the modules are not.
 * Refuses what {@link figuresOf} refuses.
 * @param reading the probe in SI, with the uncertainty of a pressure
 * @param count how many modules are covered
 * @param figures of the pressures as they are
 * @param volumeBelow volume below a height [m³]
 * @param at path of a field
 * @source GUM 5.1.3 note 2
 */
export function uncertaintiesOf(reading: ProbeReading, count: number, figures: ProbeFigures, volumeBelow: VolumeBelow, at: (field: string) => string): Outcome<ProbeUncertainties> {
  const changed: ProbeFigures[] = []
  for (const module of [...reading.modules.slice(0, count), reading.vapour]) {
    const up = figuresOf(shifted(reading, module, reading.uP), count, volumeBelow, at)
    // at the very end of a table, or of what a stratum may weigh, the way down still tells the slope
    const one = up.ok ? up : figuresOf(shifted(reading, module, -reading.uP), count, volumeBelow, at)
    if (!one.ok) return one
    changed.push(one.value)
  }
  const expanded = (of: (one: ProbeFigures) => number): number => COVERAGE * Math.hypot(...changed.map((one) => of(one) - of(figures)))
  const perhaps = (name: (typeof PERHAPS)[number]): number | undefined => {
    const here = figures[name]
    const there = changed.flatMap((one) => one[name] ?? [])
    return here === undefined || there.length < changed.length ? undefined : COVERAGE * Math.hypot(...there.map((value) => value - here))
  }
  return accepted({
    level: expanded((one) => one.level), massFromTable: expanded((one) => one.massFromTable), massFromHead: expanded((one) => one.massFromHead),
    averageDensity: expanded((one) => one.averageDensity), waterLevel: perhaps('waterLevel'), entrained: perhaps('entrained'),
  })
}

function shifted(reading: ProbeReading, module: ProbeModule, by: number): ProbeReading {
  const shift = (one: ProbeModule): ProbeModule => (one === module ? { ...one, p: one.p + by } : one)
  return { ...reading, modules: reading.modules.map(shift), vapour: shift(reading.vapour) }
}
