import { z } from 'zod'
import { accepted, allOf, andThen, eachOnce, refused, type Finding, type Outcome } from '../refusal/index.ts'
import { discriminate, type Rounded } from '../rounding/index.ts'
import { Decimal, densityIn, parseDensity, writtenDigits, type Density } from '../units/index.ts'
import { inputLine, quantitySchema, roundedLine, worksheetLineSchema, type Quantity, type WorksheetLine } from '../worksheet/index.ts'
import { BASE_TEMPERATURES, COMMODITIES, densityInputSchema, EDITIONS, SETTINGS_SHAPE, type BaseTemperature, type DensityInput } from './commodity.ts'
import { findLiquid, settingPaths, usualEdition } from './families.ts'
import type { FamilyLiquid } from './family.ts'
import { baseAsTemperature } from './liquid-at-atmosphere.ts'
import { densityMeterFactor, readMeterFactor, type MeterFactor } from './meter-factor.ts'

const written = z.string().min(1).max(64)

export const densityConversionInputSchema = z.strictObject({
  commodity: z.enum(COMMODITIES),
  edition: z.enum(EDITIONS).optional(),
  ...SETTINGS_SHAPE,
  /** At base conditions, or as observed at a temperature and pressure, with or without the hydrometer's glass correction. */
  /** May be left out only where the commodity knows its density itself. */
  density: densityInputSchema.optional(),
  /** Where a density in kg/m³ without temperature was stated, and where a hydrometer in kg/m³ is graduated. */
  baseTemperature: z.enum(BASE_TEMPERATURES),
  /** A density meter: its factor as found before, `1.0012`, … */
  meterFactor: written.optional(),
  /** … or a proving of it, from which the factor is made. */
  proving: z.strictObject({ reference: written, meter: written }).optional(),
})
export type DensityConversionInput = Readonly<z.infer<typeof densityConversionInputSchema>>

const unroundedSchema = z.strictObject({ density60: z.number(), density15: z.number(), density20: z.number(), relativeDensity: z.number(), api: z.number() })

export const densityConversionOutputSchema = z.strictObject({
  /** °API gravity at 60 °F and relative density 60/60 °F. */
  api: quantitySchema,
  relativeDensity: quantitySchema,
  density60: quantitySchema,
  density15: quantitySchema,
  density20: quantitySchema,
  /** Density meter factor that was applied; null where there was none. */
  meterFactor: z.string().nullable(),
  unrounded: unroundedSchema,
  standard: z.string(),
  subgroup: z.string(),
  worksheet: z.array(worksheetLineSchema),
})
export type DensityConversionOutput = Readonly<z.infer<typeof densityConversionOutputSchema>>

/**
 * °API gravity, relative density 60/60, and density at 60 °F, 15 °C and 20 °C from any one of them, stated or observed. The
 * way between temperatures is that of the commodity, so that the same °API is another density at 15 °C for crude and products.
 *   ρ(T) = ρb × CTL(Tb → T);  RD = ρ60 / ρw;  API = 141.5 / RD − 131.5
 * A density meter's reading is multiplied by its factor first. Rounded to 0.01 kg/m³, 0.00001 and 0.01 °API.
 * Refuses all at once what the commodity refuses, and what {@link densityMeterFactor} refuses.
 * @param input as written
 * @source MPMS-11.5 intraconversion
 * @checked d1250-80/3/25
 */
export function convertDensity(input: DensityConversionInput): Outcome<DensityConversionOutput> {
  const edition = input.edition ?? usualEdition(input.commodity)
  const metered = meteredDensity(input)
  const density = metered.ok && metered.value !== null ? metered.value.density : input.density
  const read = allOf<{ metered: Metered | null; liquid: FamilyLiquid }>({ metered, liquid: findLiquid(input.commodity, { ...input, edition, density }, { density: 'density', settings: settingPaths('') }) })
  if (!read.ok) return refused(...eachOnce(read.findings))
  const { liquid } = read.value
  return andThen(allOf({ at60: densityAt(liquid, '60 degF'), at15: densityAt(liquid, '15 degC'), at20: densityAt(liquid, '20 degC') }), (densities) =>
    accepted(outputOf(liquid, densities, read.value.metered)))
}

/** The reading of a density meter times its factor, as an observed density, with the lines of the factor. */
interface Metered { readonly density: DensityInput; readonly factor: Rounded; readonly lines: readonly WorksheetLine[] }

function meteredDensity(input: DensityConversionInput): Outcome<Metered | null> {
  return andThen(meterOf(input), (meter) => (meter === null || input.density === undefined ? accepted(null) : byMeter(input.density, meter)))
}

/** The factor of a density meter: none, as found before, or from a proving. */
function meterOf({ meterFactor, proving, density }: DensityConversionInput): Outcome<MeterFactor | null> {
  if (meterFactor === undefined && proving === undefined) return accepted(null)
  const findings: Finding[] = []
  const clause = 'COMMON-PRACTICE'
  if (meterFactor !== undefined && proving !== undefined) findings.push({ code: 'value-not-used', path: 'meterFactor', value: meterFactor, limit: 'a proving is given as well, and the factor follows from it', clause })
  if (density?.hydrometer === true) findings.push({ code: 'value-not-used', path: 'density.hydrometer', value: 'true', limit: 'a density meter has no hydrometer glass', clause })
  if (density?.temperature === undefined) findings.push({ code: 'missing-value', path: 'density.temperature', value: '', limit: 'a density meter’s reading needs the temperature at the meter', clause })
  const read = proving === undefined ? readMeterFactor(meterFactor ?? '', 'meterFactor') : densityMeterFactor(proving, 'proving')
  if (!read.ok) findings.push(...read.findings)
  return findings.length > 0 || !read.ok ? refused(...findings) : read
}

function byMeter(written: DensityInput, { factor, lines }: MeterFactor): Outcome<Metered | null> {
  return andThen(parseDensity(written.value, 'density.value'), (reading) => {
    if (reading.unit === 'degAPI') return refused({ code: 'unit-not-accepted', path: 'density.value', value: written.value, limit: 'a meter’s reading as 845.3 kg/m3, 0.8453 g/cm3 or 0.8461 RD: the factor multiplies a density', clause: 'COMMON-PRACTICE' })
    const corrected = reading.value.times(factor.value)
    return accepted<Metered | null>({
      factor, density: { ...written, value: `${corrected.toFixed()} ${reading.unit}` },
      lines: [...lines, inputLine({ symbol: 'ρmeter', name: 'Reading of the density meter; ρobs is it times DMF', value: writtenDigits(reading), unit: reading.unit, clause: 'COMMON-PRACTICE' })],
    })
  })
}

type Densities = { readonly at60: number; readonly at15: number; readonly at20: number }

/** Density at one of the base temperatures, under base pressure; as it was stated, or as the liquid has it, where it is there already. */
function densityAt(liquid: FamilyLiquid, base: BaseTemperature): Outcome<number> {
  if (base === liquid.baseTemperature) return accepted(liquid.baseDensity)
  if (base === '60 degF') return accepted(liquid.density60)
  const temperature = baseAsTemperature(base)
  return andThen(liquid.correct({ temperature, pressure: null }, { temperature: 'density', pressure: 'density' }), ({ factors }) => accepted(factors.density))
}

function outputOf(liquid: FamilyLiquid, densities: Densities, metered: Metered | null): DensityConversionOutput {
  const { at60, at15, at20 } = densities
  const relativeDensity = densityIn(at60, 'RD', liquid.water60)
  const api = densityIn(at60, 'degAPI', liquid.water60)
  const rounded = {
    api: asStated(liquid.stated, 'degAPI') ?? discriminate('converted degAPI', api), rd: asStated(liquid.stated, 'RD') ?? discriminate('converted RD', relativeDensity),
    at60: discriminate('converted kg/m3', at60), at15: discriminate('converted kg/m3', at15), at20: discriminate('converted kg/m3', at20),
  }
  const kg = (one: Rounded): Quantity => ({ value: one.text, unit: 'kg/m3' })
  const line = (symbol: string, name: string, unit: string, formula: string, one: Rounded, from: readonly string[]): WorksheetLine =>
    roundedLine({ symbol, name, unit, formula, from, rounded: one, clause: 'MPMS-11.5', notes: ['from the unrounded value'] })
  const along = (at: BaseTemperature): string => (at === liquid.baseTemperature ? 'ρb' : `ρb × CTL(${liquid.baseTemperature} → ${at}), ${liquid.standard}`)
  return {
    api: { value: rounded.api.text, unit: 'degAPI' }, relativeDensity: { value: rounded.rd.text, unit: 'RD' },
    density60: kg(rounded.at60), density15: kg(rounded.at15), density20: kg(rounded.at20),
    meterFactor: metered?.factor.text ?? null,
    unrounded: { density60: at60, density15: at15, density20: at20, relativeDensity, api },
    standard: liquid.standard, subgroup: liquid.subgroup,
    worksheet: [
      ...(metered?.lines ?? []), ...liquid.lines,
      line('ρ(60 °F)', 'Density at 60 °F', 'kg/m3', along('60 degF'), rounded.at60, ['ρb']),
      line('ρ(15 °C)', 'Density at 15 °C', 'kg/m3', along('15 degC'), rounded.at15, ['ρb']),
      line('ρ(20 °C)', 'Density at 20 °C', 'kg/m3', along('20 degC'), rounded.at20, ['ρb']),
      line('RD', 'Relative density 60/60 °F', 'RD', `ρ(60 °F) / ${liquid.water60}`, rounded.rd, ['ρ(60 °F)']),
      line('API', 'API gravity at 60 °F', 'degAPI', '141.5 / RD − 131.5', rounded.api, ['RD']),
    ],
  }
}

/** A figure that was stated keeps its value: there and back through kg/m³ a half would not stay a half. */
function asStated(stated: Density | null, unit: 'degAPI' | 'RD'): Rounded | null {
  return stated?.unit === unit ? discriminate(`converted ${unit}`, new Decimal(stated.value)) : null
}
