import { z } from 'zod'
import { densityOfWater, WATER_EQUATIONS, type WaterDensityOutput } from '../../core/volume-correction/index.ts'
import { withUnit } from '../gauge/usual-units.ts'
import { words } from '../words/en.ts'
import { computed, type Computed } from './correction-form.ts'

const text = z.string().max(100)
export const EQUATIONS = ['', ...WATER_EQUATIONS] as const

/** Water as it is typed; no equation named means the usual one. */
export const waterFormSchema = z.strictObject({ temperature: text, salinity: text, equation: z.enum(EQUATIONS), referenceTemperature: text })
export type WaterForm = Readonly<z.infer<typeof waterFormSchema>>
export const EMPTY_WATER: WaterForm = { temperature: '', salinity: '', equation: '', referenceTemperature: '' }
export const WATER_UNITS = { temperature: 'degC', salinity: 'PSU', referenceTemperature: 'degC' } as const

/** The density of the water on the sheet. */
export function computeWater({ temperature, salinity, equation, referenceTemperature }: WaterForm): Computed<WaterDensityOutput> {
  const t = words.density.water
  const outcome = densityOfWater({
    temperature: withUnit(temperature, WATER_UNITS.temperature), ...(salinity.trim() !== '' && { salinity: withUnit(salinity, WATER_UNITS.salinity) }), ...(equation !== '' && { equation }),
    ...(referenceTemperature.trim() !== '' && { referenceTemperature: withUnit(referenceTemperature, WATER_UNITS.referenceTemperature) }),
  })
  return computed(outcome, {
    temperature: { id: 'water-temperature', label: t.temperature }, salinity: { id: 'water-salinity', label: t.salinity }, equation: { id: 'water-equation', label: t.equation }, referenceTemperature: { id: 'water-referenceTemperature', label: t.reference },
  })
}
