import { z } from 'zod'
import { convertDensity, type DensityConversionOutput } from '../../core/volume-correction/index.ts'
import { withUnit } from '../gauge/usual-units.ts'
import { words } from '../words/en.ts'
import { computed, type Computed } from './correction-form.ts'
import { densityOf, liquidFindings, liquidPlaces, unitsOf, type LiquidForm } from './liquid-form.ts'
import { writtenSettings } from './liquid-settings.ts'

const text = z.string().max(100)
export const METERS = ['none', 'factor', 'proving'] as const

/** What a density meter's reading is multiplied by, beside the liquid. */
export const conversionFormSchema = z.strictObject({ meter: z.enum(METERS), meterFactor: text, provingReference: text, provingMeter: text })
export type ConversionForm = Readonly<z.infer<typeof conversionFormSchema>>
export const EMPTY_CONVERSION: ConversionForm = { meter: 'none', meterFactor: '', provingReference: '', provingMeter: '' }

/** The unit of a bare density at a meter, whose readings are never in °API. */
export function meterUnit(liquid: LiquidForm): string {
  const { density } = unitsOf(liquid)
  return density === 'degAPI' ? 'kg/m3' : density
}

/** The density of the sheet in every way of writing it. A meter factor counts only where a meter was read. */
export function computeConversion(liquid: LiquidForm, form: ConversionForm): Computed<DensityConversionOutput> {
  const t = words.density.conversion
  const unit = meterUnit(liquid)
  const meter = liquid.instrument === 'meter' ? form.meter : 'none'
  const density = densityOf(liquid)
  const outcome = convertDensity({
    commodity: liquid.commodity, ...writtenSettings(liquid), ...(density && { density }),
    ...(meter === 'factor' && { meterFactor: form.meterFactor }), ...(meter === 'proving' && { proving: { reference: withUnit(form.provingReference, unit), meter: withUnit(form.provingMeter, unit) } }),
  })
  const places = {
    ...liquidPlaces(liquid), meterFactor: { id: 'conversion-meterFactor', label: t.meterFactor }, proving: { id: 'conversion-provingMeter', label: t.proving },
    'proving.reference': { id: 'conversion-provingReference', label: t.provingReference }, 'proving.meter': { id: 'conversion-provingMeter', label: t.provingMeter },
  }
  return computed(outcome, places, liquidFindings(liquid, outcome))
}
