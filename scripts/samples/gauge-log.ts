import { stringify } from 'csv-stringify/sync'
import { chance } from './chance.ts'

/** Gauge log and probe reading of 2 October, the day after the month: a receipt into TK-301 with a stop, and TK-302 at rest. */

/** Local time of the terminal, minutes after midnight. */
function clock(minute: number): string {
  return `2026-10-02 ${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`
}

/** Level of TK-301 at a minute of the day [mm]: from 08:40 to 12:30 and from 13:35 to 17:20, with slow start and end. */
function levelAt(minute: number): number {
  const pumped = (from: number, to: number): number => {
    const share = Math.min(1, Math.max(0, (minute - from) / (to - from)))
    return share * share * (3 - 2 * share)
  }
  return 7444 + 1874 * pumped(520, 750) + 1752 * pumped(815, 1040) - 0.3 * Math.max(0, (minute - 1040) / 60)
}

/** The log of an automatic level gauge, a line every five minutes; three minutes of it at fault. */
export function gaugeLog(): string {
  const random = chance(20261002)
  const lines: string[][] = []
  for (let minute = 6 * 60; minute <= 19 * 60; minute += 5) {
    const moving = (minute > 520 && minute < 750) || (minute > 815 && minute < 1040)
    const level = levelAt(minute) + random.normal(moving ? 2 : 0.25)
    const temperature = 20.4 + 0.5 * Math.min(1, Math.max(0, (minute - 520) / 520)) + random.normal(0.02)
    const ambient = 14 + 6 * Math.sin(((minute / 60 - 8) / 24) * 2 * Math.PI) + random.normal(0.1)
    const fault = minute === 680
    lines.push([clock(minute), 'TK-301', 'LT-301', fault ? '' : String(Math.round(level)), fault ? '' : temperature.toFixed(1), ambient.toFixed(1), fault ? 'fault' : 'ok'])
  }
  // a gauge at fault still has a line, with the last level that it showed
  const faulty = lines.findIndex((line) => line[6] === 'fault')
  lines[faulty] = lines[faulty]?.map((cell, i) => (cell === '' ? lines[faulty - 1]?.[i] ?? '' : cell)) ?? []
  return stringify([['time', 'tank', 'gauge', 'level (mm)', 'temperature (°C)', 'ambient (°C)', 'status'], ...lines])
}

/** A probe of seven modules in TK-302: pressures by dp/dz = −ρ g, warmer and lighter at the top, each module a little off. */
export function probeReading(): string {
  const random = chance(302)
  const [g, level, top] = [9.80067, 12.686, 15.8]
  const heights = [0.25, 2.5, 5, 7.5, 10, 13, top]
  const density = (h: number): number => 832.6 - 0.21 * h
  const drift = [0.004, -0.003, 0.002, 0.006, -0.002, 0.021, 0]
  const modules = heights.map((h, i) => {
    const vapour = 0.35 + (1.2 * g * (top - Math.max(h, level))) / 1000
    const head = h >= level ? 0 : ((density((h + level) / 2) * g * (level - h)) / 1000)
    return [`M${i + 1}`, `${h} m`, `${(vapour + head + (drift[i] ?? 0) + random.normal(0.002)).toFixed(3)} kPa`, `${(h >= level ? 16.8 : 19.6 + 0.14 * h + random.normal(0.03)).toFixed(2)} °C`, '']
  })
  const settings = [
    ['tank', 'TK-302'], ['gravity', `${g} m/s2`], ['vapour-density', '1.2 kg/m3'], ['water-threshold', '850 kg/m3'], ['water-density', '1002 kg/m3'],
    ['pressure-uncertainty', '0.010 kPa'], ['zero-limit', '0.030 kPa'],
  ]
  return `${stringify(settings)}\n${stringify([['module', 'height', 'pressure', 'temperature', 'offset'], ...modules])}`
}
