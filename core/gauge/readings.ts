import { accepted, refused, andThen, type Finding, type Outcome } from '../refusal/index.ts'
import { degC, millimetres, parsePercent, parseTemperature, type Decimal, type Length, type Percent, type Temperature } from '../units/index.ts'
import type { ConditionPaths, Conditions, WrittenConditions } from '../volume-correction/index.ts'
import { notNegative } from './level-reading.ts'
import type { GaugeSnapshot } from './snapshot.ts'

/** Reads temperature and pressure of a liquid within the limits of the standard that corrects it. */
export type ConditionReader = (written: WrittenConditions, paths: ConditionPaths) => Outcome<Conditions>

/** One spot temperature and its level above datum. */
export interface Spot { readonly level: Length; readonly temperature: Temperature }

/** Air at the shell [°C]; anything outside is a slip of the pen or of the unit. Ours, no source. */
const AIR = { from: -60, to: 65 }

/**
 * Temperature of the air at the shell; needed unless the tank is insulated or no upright cylinder, where it is not used.
 * Refuses `missing-value`, `out-of-range` and unreadable texts.
 * @source MPMS-12.1.1 shell temperature
 */
export function ambientTemperature(text: string | undefined, insulated: boolean, path: string): Outcome<Temperature | undefined> {
  if (text === undefined) {
    if (insulated) return accepted(undefined)
    return refused({ code: 'missing-value', path, value: '', limit: 'the shell temperature of a tank that is not insulated needs the temperature of the air', clause: 'MPMS-12.1.1 shell temperature' })
  }
  return andThen(parseTemperature(text, path), (read) => {
    const celsius = degC(read)
    if (celsius >= AIR.from && celsius <= AIR.to) return accepted(read)
    return refused({ code: 'out-of-range', path, value: text, limit: '-60 to 65 degC (-76 to 149 degF)', clause: 'HOUSE gauge snapshot' })
  })
}

/**
 * Spot temperatures, each within the liquid. All findings at once.
 * @param levelMm level above datum [mm]; undefined where the level itself was refused
 * @param readConditions limits of the liquid's standard
 * @source MPMS-7 spot temperatures
 */
export function spots(
  list: NonNullable<GaugeSnapshot['temperatures']['spots']>, levelMm: Decimal | undefined, path: string, readConditions: ConditionReader,
): Outcome<readonly Spot[]> {
  const findings: Finding[] = []
  const read: Spot[] = []
  for (const [index, spot] of list.entries()) {
    const place = `${path}.${index}`
    const level = notNegative(spot.level, `${place}.level`)
    const temperature = readConditions({ temperature: spot.temperature }, { temperature: `${place}.temperature`, pressure: '' })
    if (!level.ok) findings.push(...level.findings)
    if (!temperature.ok) findings.push(...temperature.findings)
    if (!level.ok || !temperature.ok) continue
    if (levelMm !== undefined && millimetres(level.value).gt(levelMm)) {
      findings.push({ code: 'out-of-range', path: `${place}.level`, value: spot.level, limit: `0 to the level, ${levelMm.toFixed()} mm`, clause: 'MPMS-7 spot temperatures' })
    }
    read.push({ level: level.value, temperature: temperature.value.temperature })
  }
  return findings.length > 0 ? refused(...findings) : accepted(read)
}

/** Sediment and water, 0 to 100 % by volume. Refuses `out-of-range` and unreadable texts. @source MPMS-12.1.1 CSW */
export function sedimentAndWater(text: string, path: string): Outcome<Percent> {
  return andThen(parsePercent(text, path), (percent) => percent.value.gte(0) && percent.value.lte(100)
    ? accepted(percent)
    : refused({ code: 'out-of-range', path, value: text, limit: '0 to 100 %', clause: 'MPMS-12.1.1 CSW' }))
}
