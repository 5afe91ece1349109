import { correctVolume } from '../../core/volume-correction/index.ts'
import { PRODUCTS, type SampleProduct, type SampleTank } from './place.ts'
import { BARREL, levelAt, type Row } from './tank-shape.ts'

/** What is truly in a tank: net standard volume [m³ at base], S&W, free water [m³], temperature [°C], base density [kg/m³]. */
export interface Contents { readonly nsv: number; readonly sedimentAndWater: number; readonly water: number; readonly temperature: number; readonly density: number }

export function productOf(tank: SampleTank): SampleProduct {
  const found = PRODUCTS.find((product) => product.code === tank.product)
  if (found === undefined) throw new Error(`no product ${tank.product}`)
  return found
}

/** Cubic metres per unit in which the product is booked. */
export function unitOf(tank: SampleTank): number {
  return productOf(tank).volumeUnit === 'bbl' ? BARREL : 1
}

/** CTPL of a base density [kg/m³] at a temperature [°C], at atmospheric pressure. */
export function correctionOf(product: SampleProduct, density: number, temperature: number): number {
  const outcome = correctVolume({
    commodity: product.commodity, baseTemperature: product.baseTemperature, density: { value: `${density.toFixed(4)} kg/m3` },
    temperature: product.baseTemperature === '60 degF' ? `${(temperature * 1.8 + 32).toFixed(4)} degF` : `${temperature.toFixed(4)} degC`,
  })
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.findings))
  return outcome.value.unrounded.ctpl
}

const inAir = (density: number): number => 1.000149926 * density - 1.199407795

/** Where liquid and water stand above datum [m], going backwards from what is in the tank to what a tape would show. */
export function standing(tank: SampleTank, rows: readonly Row[], contents: Contents, ambient: number): { readonly level: number; readonly water: number } {
  const factor = correctionOf(productOf(tank), contents.density, contents.temperature)
  const observed = contents.nsv / (1 - contents.sedimentAndWater) / factor
  const roof = roofEffect(tank, contents.density, factor)
  const shell = tank.insulated ? contents.temperature : (7 * contents.temperature + ambient) / 8
  const warm = shell - (tank.writing === 'imperial' ? (60 - 32) / 1.8 : 15)
  const stretch = 1 + 2 * 1.12e-5 * warm + (1.12e-5 * warm) ** 2
  return { level: levelAt(rows, (observed - roof) / stretch + contents.water), water: levelAt(rows, contents.water) }
}

/** What the roof adds to the volume that the table shows [m³]; negative where it displaces more than the table took off. */
function roofEffect(tank: SampleTank, density: number, factor: number): number {
  if (tank.roofMass === undefined) return 0
  if (tank.printed !== undefined) {
    const gravity = (141.5 * 999.016) / (density * factor) - 131.5
    return (tank.printed.referenceApi - gravity) * tank.printed.perApi
  }
  const displaced = tank.roofMass / (inAir(density) * factor)
  return tank.roofReference === undefined ? -displaced : tank.roofMass / inAir(tank.roofReference) - displaced
}
