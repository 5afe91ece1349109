import type { Outcome } from '../../core/refusal/index.ts'
import type { BaseTemperature, DensityInput } from '../../core/volume-correction/index.ts'
import type { FamilyLiquid, FamilyPaths } from '../../core/volume-correction/family.ts'
import { LIGHT_HYDROCARBONS } from '../../core/volume-correction/lpg.ts'

export const SETTINGS_AT: FamilyPaths['settings'] = {
  alpha: 'product.alpha', molarMass: 'product.molarMass', component: 'product.component', content: 'product.content', salinity: 'product.salinity',
  curve: 'product.curve', figures: 'product.figures', edition: 'product.edition', baseTemperature: 'product.baseTemperature',
}

/** A light hydrocarbon from its density as written, which stood at `density`. */
export function baseLiquid(density: DensityInput | undefined, baseTemperature: BaseTemperature): Outcome<FamilyLiquid> {
  return LIGHT_HYDROCARBONS.findLiquid({ edition: 'MPMS-11.2.4-2007', baseTemperature, density }, { density: 'density', settings: SETTINGS_AT })
}
