import {
  correctVolume, FAMILIES, findLiquid, readConditionsOf, settingPaths, usualEdition,
  type Commodity, type Edition, type VolumeCorrectionInput,
} from '../../core/volume-correction/index.ts'
import { must } from '../support/must.ts'
import { processorTime } from './clock.ts'

/** One liquid of every commodity: one without it does not compile. */
const LIQUIDS: { readonly [C in Commodity]: VolumeCorrectionInput } = {
  crude: { commodity: 'crude', density: { value: '31.4 degAPI' }, baseTemperature: '60 degF', temperature: '88.3 degF', pressure: '25 psi' },
  refined: { commodity: 'refined', density: { value: '745.3 kg/m3' }, baseTemperature: '15 degC', temperature: '31.25 degC', pressure: '350 kPa' },
  lube: { commodity: 'lube', density: { value: '884.2 kg/m3' }, baseTemperature: '15 degC', temperature: '41.5 degC' },
  special: { commodity: 'special', alpha: '0.000510 /degF', density: { value: '780 kg/m3' }, baseTemperature: '60 degF', temperature: '80 degF' },
  lpg: { commodity: 'lpg', density: { value: '508.0 kg/m3' }, baseTemperature: '15 degC', temperature: '31.25 degC', pressure: '20 bar' },
  chemical: { commodity: 'chemical', component: 'benzene', density: { value: '884.5 kg/m3' }, baseTemperature: '60 degF', temperature: '80 degF' },
  ethanol: { commodity: 'ethanol', density: { value: '794.0 kg/m3' }, baseTemperature: '60 degF', temperature: '80 degF' },
  biodiesel: { commodity: 'biodiesel', density: { value: '883.0 kg/m3' }, baseTemperature: '60 degF', temperature: '80 degF' },
  curve: {
    commodity: 'curve', baseTemperature: '15 degC', temperature: '31.25 degC',
    curve: { certificate: 'L 2291', laboratory: 'Quay Laboratory', date: '2026-08-03', points: [['0 degC', '911.2 kg/m3'], ['15 degC', '900.9 kg/m3'], ['30 degC', '890.6 kg/m3'], ['45 degC', '880.4 kg/m3']].map(([temperature = '', density = '']) => ({ temperature, density })) },
  },
  water: { commodity: 'water', baseTemperature: '15 degC', temperature: '20 degC' },
}

export interface Rate { readonly name: string; readonly what: string; readonly perSecond: number }

/** Calls per second of processor time, over at least 0.4 s, after as long a run-up. */
export function rateOf(call: () => unknown): number {
  count(call)
  return count(call)
}

function count(call: () => unknown): number {
  const begin = processorTime()
  let calls = 0
  let spent = 0
  while (spent < 4e8) {
    for (let i = 0; i < 64; i += 1) call()
    calls += 64
    spent = processorTime() - begin
  }
  return (calls * 1e9) / spent
}

/** How often a second each family makes factors: from a base density that is known, and from everything as written. */
export function familyRates(): readonly Rate[] {
  return Object.keys(FAMILIES).flatMap((name) => {
    const input = LIQUIDS[name as Commodity]
    const editions: readonly (Edition | undefined)[] = name === 'refined' ? [undefined, 'ASTM-D1250-80'] : [undefined]
    return editions.flatMap((named) => {
      const edition = named ?? usualEdition(input.commodity)
      // the tables of 1980 have no pressure
      const { pressure, ...unpressed } = input
      const whole: VolumeCorrectionInput = named === undefined ? input : { ...unpressed, edition: named }
      const at = { temperature: 'temperature', pressure: 'pressure' }
      const liquid = must(findLiquid(input.commodity, { ...whole, edition }, { density: 'density', settings: settingPaths('') }))
      const conditions = must(readConditionsOf(input.commodity, edition, whole, at))
      must(correctVolume(whole))
      const title = named === undefined ? input.commodity : `${input.commodity}, ${named}`
      return [
        { name: title, what: 'factors of a known liquid, rounded, with worksheet lines', perSecond: rateOf(() => liquid.correct(conditions, at)) },
        { name: title, what: 'everything from text', perSecond: rateOf(() => correctVolume(whole)) },
      ]
    })
  })
}
