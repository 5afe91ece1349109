import type { Product } from '../../core/quantity/index.ts'
import { Decimal, densityIn } from '../../core/units/index.ts'
import { findLiquid, settingPaths, type FamilyLiquid } from '../../core/volume-correction/index.ts'

/** Densities that are tried, so that every zone of a standard is met [kg/m³]. */
const TRIED = { from: 350, to: 1160, step: 5 } as const
const PATHS = { density: 'density', settings: settingPaths('') }

/**
 * Which standard, tables and edition will produce the factors of a product, as its tickets will print them. Where that
 * depends on the density, each that can come up: the core is asked for one density after the other.
 */
export function standardsOf(product: Product): readonly string[] {
  return inOneLine([...new Set(liquidsOf(product).map(({ standard }) => standard))])
}

/** Whether volumes are multiplied by the factors as they are rounded and printed. */
export function volumesBy(product: Product): 'rounded' | 'unrounded' | undefined {
  const [liquid] = liquidsOf(product)
  const there = liquid?.correct({ temperature: baseOf(product), pressure: null }, { temperature: '', pressure: '' })
  return there?.ok ? there.value.volumesBy : undefined
}

function liquidsOf(product: Product): readonly FamilyLiquid[] {
  const own = findLiquid(product.commodity, product, PATHS)
  if (own.ok) return [own.value]
  const liquids: FamilyLiquid[] = []
  for (let kgPerM3 = TRIED.from; kgPerM3 <= TRIED.to; kgPerM3 += TRIED.step) {
    const value = `${new Decimal(densityIn(kgPerM3, product.densityUnit)).toFixed()} ${product.densityUnit}`
    const found = findLiquid(product.commodity, { ...product, density: { value, temperature: product.baseTemperature } }, PATHS)
    if (found.ok) liquids.push(found.value)
  }
  return liquids
}

function baseOf({ baseTemperature }: Product): { readonly text: string; readonly value: Decimal; readonly unit: 'degF' | 'degC' } {
  const [digits = '', unit = ''] = baseTemperature.split(' ')
  return { text: baseTemperature, value: new Decimal(digits), unit: unit === 'degF' ? 'degF' : 'degC' }
}

/** Standards that differ by their zone alone in one line: `…, refined products (gasoline, transition, jet, fuel oil)`. */
function inOneLine(standards: readonly string[]): readonly string[] {
  const zones = new Map<string, string[]>()
  for (const standard of standards) {
    const [, before = standard, zone, after = ''] = /^(.*) \(([^()]+)\)(.*)$/.exec(standard) ?? []
    const key = zone === undefined ? standard : `${before}\n${after}`
    zones.set(key, [...(zones.get(key) ?? []), ...(zone === undefined ? [] : [zone])])
  }
  return [...zones].map(([key, names]) => {
    const [before = '', after = ''] = key.split('\n')
    return names.length === 0 ? key : `${before} (${names.join(', ')})${after}`
  })
}
