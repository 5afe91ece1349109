import type { Chance } from './chance.ts'
import { correctionOf, productOf, type Contents } from './forward.ts'
import type { SampleTank } from './place.ts'
import { INCH } from './tank-shape.ts'

/** A gauge as a person writes it down; an empty text is an empty cell. */
export interface WrittenGauge {
  readonly innage: string; readonly ullage: string; readonly referenceHeight: string; readonly waterCut: string
  readonly liquid: string; readonly ambient: string
  readonly density: string; readonly densityTemperature: string; readonly densityInstrument: 'hydrometer' | 'density-meter' | 'base'
  readonly sedimentAndWater: string
}

/** Errors of a careful gauger: levels by 0.7 mm, water cuts by 0.8 mm, temperatures by 0.05 °C, samples by 0.1 kg/m³. */
export function written(tank: SampleTank, stands: { readonly level: number; readonly water: number }, contents: Contents, air: number, luck: Chance): WrittenGauge {
  const level = stands.level + luck.normal(0.0007)
  const water = Math.max(0, stands.water + luck.normal(0.0008))
  const liquid = contents.temperature + luck.normal(0.05)
  const reference = tank.byUllage ? Number(tank.written.height.split(' ')[0]) : 0
  const imperial = tank.writing === 'imperial'
  return {
    innage: tank.byUllage ? '' : imperial ? eighths(level) : `${String(Math.round(level * 1000))} mm`,
    ullage: tank.byUllage ? `${(reference - level).toFixed(3)} m` : '',
    referenceHeight: tank.byUllage ? `${(reference + luck.normal(0.0008)).toFixed(3)} m` : '',
    waterCut: imperial ? eighths(water) : `${String(Math.round(water * 1000))} mm`,
    liquid: imperial ? `${fahrenheit(liquid).toFixed(1)} °F` : `${liquid.toFixed(1)} °C`,
    ambient: tank.insulated ? '' : imperial ? `${fahrenheit(air + luck.normal(0.3)).toFixed(0)} °F` : `${(Math.round((air + luck.normal(0.3)) * 2) / 2).toFixed(1)} °C`,
    ...density(tank, contents, liquid, luck),
    sedimentAndWater: `${(100 * Math.max(0, contents.sedimentAndWater + (contents.sedimentAndWater > 0.001 ? luck.normal(0.00006) : 0))).toFixed(2)} %`,
  }
}

/** Crude by hydrometer, diesel by density meter, gasoline and fuel oil from the laboratory at base conditions. */
function density(tank: SampleTank, contents: Contents, liquid: number, luck: Chance): Pick<WrittenGauge, 'density' | 'densityTemperature' | 'densityInstrument'> {
  const product = productOf(tank)
  const base = contents.density + luck.normal(0.1)
  const sample = liquid + luck.normal(0.8)
  if (product.code === 'CRUDE') {
    const warm = fahrenheit(sample) - 60
    const glass = 1 - 0.00001278 * warm - 0.0000000062 * warm ** 2
    return { density: `${gravity((base * correctionOf(product, base, sample)) / glass).toFixed(1)} °API`, densityTemperature: `${fahrenheit(sample).toFixed(1)} °F`, densityInstrument: 'hydrometer' }
  }
  if (product.code === 'DIESEL') {
    return { density: `${(base * correctionOf(product, base, sample)).toFixed(1)} kg/m3`, densityTemperature: `${sample.toFixed(1)} °C`, densityInstrument: 'density-meter' }
  }
  return { density: product.densityUnit === 'degAPI' ? `${gravity(base).toFixed(1)} °API` : `${base.toFixed(1)} kg/m3`, densityTemperature: '', densityInstrument: 'base' }
}

const fahrenheit = (celsius: number): number => celsius * 1.8 + 32
const gravity = (density: number): number => (141.5 * 999.016) / density - 131.5

/** Feet, inches and eighths, as a tape shows them. */
export function eighths(metres: number): string {
  const all = Math.round((metres / INCH) * 8)
  const feet = Math.floor(all / 96)
  const inches = Math.floor((all - feet * 96) / 8)
  let above = all - feet * 96 - inches * 8
  let below = 8
  while (above > 0 && above % 2 === 0) { above /= 2; below /= 2 }
  const fraction = above === 0 ? '' : `${String(above)}/${String(below)}`
  if (feet > 0) return `${String(feet)} ft ${[String(inches), fraction].join(' ').trim()} in`
  return `${[inches > 0 || fraction === '' ? String(inches) : '', fraction].join(' ').trim()} in`
}
