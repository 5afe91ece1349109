import { describe, expect, it } from 'vitest'
import { chance } from '../../support/chance.ts'
import { CYLINDER, G, probeIn, profileOf, type Contents, type Layer } from '../../support/forward-probe.ts'

/**
 * Ten thousand random tanks with noise. The readings, the true mass and the true water come from physics alone: pressures by
 * dp/dz = −ρ g, mass by ∫ρ A dz. The noise of every pressure is uniform within ±√3 u, which has the standard uncertainty u
 * that is stated; so level, mass and water must come back within five times their own (2.5 times the expanded one), plus what
 * printing rounds away.
 */
const RUNS = 10_000
const next = chance(20_260_901)
const uniform = (from: number, to: number): number => from + ((to - from) * next(1_000_000)) / 999_999
const chosen = <T>(...of: readonly T[]): T => of[next(of.length)]!

interface RandomTank {
  readonly contents: Contents
  /** Area of each piece between heights [m²]; the table is straight between them. */
  readonly areas: readonly { readonly to: number; readonly area: number }[]
  readonly water: number | undefined
  /** Density of the product above the water. */
  readonly product: number
  readonly u: number
  readonly cylinder: boolean
}

/** Heights of 3 to 12 modules, and a level between the second and the last. */
function aRandomTank(): RandomTank {
  const count = 3 + next(10)
  const u = uniform(2, 20)
  const heights = [uniform(0, 0.4)]
  while (heights.length < count) heights.push(heights.at(-1)! + uniform(1.2, 3))
  const covered = 2 + next(count - 2)
  const layered = next(2) === 0
  const cylinder = next(2) === 0
  const hasWater = covered >= 3 && next(2) === 0
  // a module that a lighter liquid just covers cannot be told from one with a wrong zero, and two covered modules are the fewest:
  // both are tried by themselves
  const clear = layered || hasWater || covered === 2 ? (80 * u) / (600 * G) : 0
  const low = heights[covered - 1]! + clear
  const level = uniform(low, Math.max(low, heights[covered]! - 0.01))
  const product = uniform(650, hasWater ? 900 : 950)
  const span = next(covered - 2 || 1)
  const water = hasWater ? heights[span]! + uniform(0.4, 0.95) * (heights[span + 1]! - heights[span]!) : undefined
  const edges = heights.slice(1, covered - 1)
  const pieces = [...edges, heights.at(-1)! + 1]
  let rho = product
  // product over the water does not change within the span of the water and the one above it
  const layers: Layer[] = pieces.map((to, i) => {
    if (layered && !(hasWater && i <= span + 1)) rho = Math.max(600, rho - uniform(0, 30))
    return { to, rho }
  })
  const areas = pieces.map((to) => ({ to, area: cylinder ? 0 : uniform(300, 2000) }))
  const one = uniform(100, 3000)
  return {
    contents: {
      layers: water === undefined ? layers : [{ to: water, rho: 1005 }, ...layers.filter(({ to }) => to > water)], level, heights, rhoV: uniform(0, 5), pTop: uniform(-500, 8000),
      rhoA: chosen(0, 1.2), datumOffset: chosen(0, uniform(0, heights[0]!)), error: (place) => noise[place]!,
    },
    areas: cylinder ? [{ to: 60, area: one }] : areas, water, product, u, cylinder,
  }
}

let noise: readonly number[] = []

/** Volume below a height, and mass, by adding up pieces. */
function held(height: number, { areas }: RandomTank): number {
  let below = 0
  return areas.reduce((sum, { to, area }) => {
    const part = Math.max(0, Math.min(to, height) - below) * area
    below = to
    return sum + part
  }, 0)
}

function trueMass(tank: RandomTank): number {
  let below = 0
  return tank.contents.layers.reduce((sum, { to, rho }) => {
    const top = Math.min(to, tank.contents.level)
    const part = top > below ? rho * (held(top, tank) - held(below, tank)) : 0
    below = Math.max(below, top)
    return sum + part
  }, 0)
}

function worstOf(runs: number): { readonly level: number; readonly mass: number; readonly head: number; readonly water: number; readonly waters: number } {
  const worst = { level: 0, mass: 0, head: 0, water: 0, waters: 0 }
  for (let run = 0; run < runs; run += 1) {
    const tank = aRandomTank()
    const { contents, water, u } = tank
    noise = contents.heights.map(() => uniform(-Math.sqrt(3), Math.sqrt(3)) * u)
    const tops = [...tank.areas.map(({ to }) => to), contents.heights.at(-1)! + 0.5].sort((a, b) => a - b)
    const profile = profileOf(probeIn(contents, {
      pressureUncertainty: `${(u / 1000).toFixed(9)} kPa`, zeroLimit: `${((6 * u) / 1000).toFixed(9)} kPa`,
      capacityTable: { ...CYLINDER, rows: [['0', '0'], ...tops.map((to): [string, string] => [(to * 1000).toFixed(6), held(to, tank).toFixed(9)])].filter(([at], i, all) => i === 0 || Number(at) > Number(all[i - 1]![0])) as [string, string][] },
      ...(water === undefined ? {} : { waterThreshold: `${(tank.product + 25).toFixed(3)} kg/m3`, waterDensity: '1005 kg/m3' }),
    }))
    const over = (found: string, truth: number, expanded: string, printed: number): number => Math.max(0, Math.abs(Number(found) - truth) - printed) / (2.5 * Number(expanded))
    worst.level = Math.max(worst.level, over(profile.level.value, contents.level * 1000, profile.uncertainties.level.value, 0.6))
    worst.mass = Math.max(worst.mass, over(profile.massFromTable.value, trueMass(tank), profile.uncertainties.massFromTable.value, 1))
    if (tank.cylinder) worst.head = Math.max(worst.head, over(profile.massFromHead.value, trueMass(tank), profile.uncertainties.massFromHead.value, 1))
    if (water !== undefined) {
      worst.waters += 1
      worst.water = Math.max(worst.water, over(profile.waterLevel?.value ?? 'none', water * 1000, profile.uncertainties.waterLevel?.value ?? '0', 0.6))
    } else if (profile.waterLevel !== null) throw new Error('water where there was none')
  }
  return worst
}

describe(`${RUNS} random tanks: uniform and layered, with and without water, cylinders and others, vented and not`, () => {
  const worst = worstOf(RUNS)
  it('the level comes back within what the sensors allow', () => expect(worst.level).toBeLessThan(1))
  it('so does the mass through the table', () => expect(worst.mass).toBeLessThan(1))
  it('so does the mass from head pressure in a cylinder', () => expect(worst.head).toBeLessThan(1))
  it('so does the top of the water, wherever in a span it is', () => {
    expect(worst.waters).toBeGreaterThan(RUNS / 5)
    expect(worst.water).toBeLessThan(1)
  })
  it('and the stated uncertainties are not idle: the worst of so many runs is more than a third of what is allowed', () => {
    expect(Math.min(worst.level, worst.mass, worst.head, worst.water)).toBeGreaterThan(1 / 3)
  })
})
