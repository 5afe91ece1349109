import { chance, type Chance } from './chance.ts'
import { productOf, standing, unitOf, type Contents } from './forward.ts'
import type { SampleTank } from './place.ts'
import { INVENTORY_DAYS, PASSING_VALVE, PLAN, STARTS, WATER_DRAWS, type Planned } from './schedule.ts'
import type { Row } from './tank-shape.ts'
import { written, type WrittenGauge } from './writing.ts'

/** A gauge of the month; hours since midnight, local time, at the beginning of September. */
export interface Gauge { readonly hour: number; readonly tank: SampleTank; readonly readings: WrittenGauge }
export interface Movement { readonly plan: Planned; readonly opening: Gauge; readonly closing: Gauge }
export interface TankMonth { readonly inventories: readonly Gauge[]; readonly movements: readonly Movement[] }

const GAUGE_HOUR = 6
const at = (day: number, hour: number): number => (day - 1) * 24 + hour

type Event =
  | { readonly hour: number; readonly what: 'inventory' | 'draw' }
  | { readonly hour: number; readonly what: 'opening' | 'closing'; readonly plan: Planned }

/** Air at the terminal [°C]: warmest at three in the afternoon, a little cooler towards the end of the month. */
export function airAt(hour: number, daily: readonly number[]): number {
  const day = Math.floor(hour / 24)
  return 19.5 - 0.06 * (hour / 24) + (daily[day] ?? 0) + 5.2 * Math.cos((2 * Math.PI * (hour - 15)) / 24)
}

/** Warmer and cooler days, each a little like the one before. */
export function weather(seed: number): readonly number[] {
  const luck = chance(seed)
  const days: number[] = []
  for (let day = 0; day < 33; day++) days.push(0.6 * (days.at(-1) ?? 0) + luck.normal(1.1))
  return days
}

/** One tank through the month: what is in it, hour by hour, and what a gauger writes down at each event. */
export function monthOf(tank: SampleTank, place: number, rows: readonly Row[], daily: readonly number[]): TankMonth {
  const luck = chance(7_000 + tank.shape.seed)
  const start = STARTS.find((candidate) => candidate.tank === tank.code)
  if (start === undefined) throw new Error(`nothing is said of ${tank.code} at the start`)
  let contents: Contents = { nsv: start.volume * unitOf(tank), sedimentAndWater: start.sedimentAndWater, water: start.water, temperature: start.temperature, density: start.density }
  let now = at(1, GAUGE_HOUR)
  const inventories: Gauge[] = []
  const movements: Movement[] = []
  let opening: Gauge | undefined
  for (const event of eventsOf(tank, place, luck)) {
    for (; now < event.hour; now += 0.25) contents = quarterHourLater(tank, contents, airAt(now, daily))
    if (event.what === 'closing') contents = moved(tank, contents, event.plan)
    if (event.what === 'draw') contents = { ...contents, water: contents.water * 0.35 }
    if (event.what === 'draw') continue
    const air = airAt(event.hour, daily)
    const gauge = { hour: event.hour, tank, readings: written(tank, standing(tank, rows, contents, air), contents, air, luck) }
    if (event.what === 'inventory') inventories.push(gauge)
    if (event.what === 'opening') opening = gauge
    if (event.what === 'closing' && opening !== undefined) movements.push({ plan: event.plan, opening, closing: gauge })
  }
  return { inventories, movements }
}

/** Tanks are gauged one after the other, eight minutes apart; movements begin and end at whatever minute it was. */
function eventsOf(tank: SampleTank, place: number, luck: Chance): readonly Event[] {
  const minutes = (): number => Math.floor(luck.between(0, 12)) / 12
  const plans = PLAN.filter((plan) => plan.tank === tank.code).flatMap((plan): Event[] => {
    const hour = at(plan.day, plan.hour) + minutes() / 4
    return [{ hour, what: 'opening', plan }, { hour: hour + plan.hours + minutes(), what: 'closing', plan }]
  })
  const inventories = INVENTORY_DAYS.map((day): Event => ({ hour: at(day, GAUGE_HOUR) + (place * 8) / 60, what: 'inventory' }))
  const draws = WATER_DRAWS.filter((draw) => draw.tank === tank.code).map(({ day }): Event => ({ hour: at(day, 7.5), what: 'draw' }))
  return [...plans, ...inventories, ...draws].toSorted((a, b) => a.hour - b.hour)
}

/** Heat to or from the air, or to the heating coil; water settles out of crude; floating roofs breathe a little; the valve passes. */
function quarterHourLater(tank: SampleTank, contents: Contents, air: number): Contents {
  const rate = tank.insulated ? (56 - contents.temperature) / 120 : (air - contents.temperature) / 260
  const floor = productOf(tank).code === 'CRUDE' ? 0.0019 : contents.sedimentAndWater
  const settled = contents.sedimentAndWater > floor ? ((contents.sedimentAndWater - floor) / 150) * 0.25 : 0
  const breathed = tank.roof === 'none' ? 0 : 0.4
  const passed = tank.code === PASSING_VALVE.from ? PASSING_VALVE.perDay : tank.code === PASSING_VALVE.into ? -PASSING_VALVE.perDay : 0
  const total = contents.nsv / (1 - contents.sedimentAndWater)
  return {
    ...contents,
    temperature: contents.temperature + rate * 0.25,
    sedimentAndWater: contents.sedimentAndWater - settled,
    water: contents.water + total * settled,
    nsv: contents.nsv - ((breathed + passed) * unitOf(tank) * 0.25) / 24,
  }
}

/** After a delivery there is less of the same; after a receipt the two are mixed by volume. */
function moved(tank: SampleTank, contents: Contents, plan: Planned): Contents {
  const volume = plan.volume * unitOf(tank)
  const { cargo } = plan
  if (cargo === undefined) return { ...contents, nsv: contents.nsv - volume }
  const share = volume / (contents.nsv + volume)
  const mixed = (before: number, brought: number): number => before * (1 - share) + brought * share
  return {
    nsv: contents.nsv + volume, water: contents.water + cargo.water,
    temperature: mixed(contents.temperature, cargo.temperature), density: mixed(contents.density, cargo.density),
    sedimentAndWater: mixed(contents.sedimentAndWater, cargo.sedimentAndWater),
  }
}
