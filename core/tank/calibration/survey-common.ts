import type { Finding } from '../../refusal/index.ts'
import { millimetres, parseLength, type Decimal, type Temperature } from '../../units/index.ts'
import { readTemperature } from '../../volume-correction/index.ts'
import { checkDate } from '../check-capacity-table.ts'
import { SHELL_EXPANSION, temperatureIn } from '../shell.ts'
import { collector, cubicMetres, metres, RANGES } from './measured.ts'
import type { TankSurvey } from './survey.ts'
import type { Deadwood } from './upright-volume.ts'

/** What every survey says, read. */
export interface CommonSurvey {
  readonly base: Temperature
  readonly measured: Temperature
  /** Linear expansion of the shell per degree of the base temperature's unit. */
  readonly alpha: number
  /** From the temperature of the survey to that of the table, in the unit of the latter. */
  readonly toBase: number
  /** Step of the table [mm], exact. */
  readonly step: Decimal
  readonly deadwood: readonly Deadwood[]
}

/**
 * Reads what every survey says; all findings at once.
 * @param survey as the schema accepted it
 * @param path of the survey
 */
export function readCommon(survey: TankSurvey, path: string): { readonly value: CommonSurvey | undefined; readonly findings: readonly Finding[] } {
  const { findings, keep } = collector()
  findings.push(...checkDate(survey.issuedOn, `${path}.issuedOn`))
  const base = keep(readTemperature(survey.baseTemperature, `${path}.baseTemperature`))
  const measured = keep(readTemperature(survey.measuredAt, `${path}.measuredAt`))
  const step = keep(metres(survey.step, `${path}.step`, RANGES.step))
  const exactStep = parseLength(survey.step, `${path}.step`)
  const deadwood = survey.deadwood.flatMap((one, i) => {
    const place = `${path}.deadwood.${i + 1}`
    const from = keep(metres(one.from, `${place}.from`, RANGES.level))
    const to = keep(metres(one.to, `${place}.to`, RANGES.level))
    const volume = keep(cubicMetres(one.volume, `${place}.volume`))
    if (from === undefined || to === undefined || volume === undefined) return []
    if (from >= to) findings.push({ code: 'out-of-range', path: `${place}.to`, value: one.to, limit: `above ${one.from}, where it begins`, clause: 'MPMS-2.2A deadwood' })
    return [{ from, to, volume: one.counts === 'takes' ? volume : -volume }]
  })
  if (base === undefined || measured === undefined || step === undefined || !exactStep.ok || findings.length > 0) return { value: undefined, findings }
  const alpha = Number(SHELL_EXPANSION[survey.shellMaterial][base.unit])
  const toBase = base.value.minus(temperatureIn(measured, base.unit)).toNumber()
  return { value: { base, measured, alpha, toBase, step: millimetres(exactStep.value), deadwood }, findings }
}
