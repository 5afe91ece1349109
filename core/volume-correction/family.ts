import type { Outcome } from '../refusal/index.ts'
import type { Rounded } from '../rounding/index.ts'
import type { Citation, SourceKey } from '../sources.ts'
import type { Density, DensityUnit, Pressure, Temperature } from '../units/index.ts'
import type { WorksheetLine } from '../worksheet/index.ts'
import type { BaseTemperature, DensityInput } from './commodity.ts'
import type { ProductCurve } from './product-curve-schema.ts'

/**
 * What a family of commodities does, as data and pure functions; one constant per family, listed in `families.ts`, whose
 * record has a place for every commodity: a commodity without a family does not compile.
 *
 *   settings ──► checkSettings            when a product is set up
 *   t, P as written ──► readConditions    with the family's own limits, whatever became of the density
 *   density as written ──► findLiquid ──► liquid.correct(t, P) ──► CTL, CPL, CTPL with their lines
 *
 * Every function gathers all that is wrong and refuses once; none throws for anything a person wrote.
 */
export interface Family {
  /** Keys of `core/sources.ts`: editions of the standard that the family knows, the default first. */
  readonly editions: readonly [SourceKey, ...SourceKey[]]
  /** Settings that a product of this family needs, and those that it may have; any other is refused as `value-not-used`. */
  readonly settings: { readonly needs: readonly SettingName[]; readonly may: readonly SettingName[] }
  /**
   * Reads the settings that are there, each with its limits and against edition and base temperature. What is missing or
   * does not belong to the family is refused by `checkSettings` of `families.ts`.
   * @param paths where each setting stood: `product.alpha`
   */
  readonly checkSettings: (input: ProductSettings, paths: SettingPaths) => Outcome<null>
  /**
   * Temperature and pressure as written, within the limits of the standard, unrounded; `null` where no pressure was
   * stated. Called for conditions of a tank or line and, by the family itself, for those of an observed density.
   * Refuses `unreadable-value`, `unit-not-accepted`, `out-of-range`.
   */
  readonly readConditions: (written: WrittenConditions, paths: ConditionPaths, edition: SourceKey) => Outcome<Conditions>
  /**
   * The liquid that was written, with its base density: stated at base conditions (no temperature), or observed at a
   * temperature and pressure and taken to base (`readDensity` in `density-reading.ts` reads either).
   * Settings are read here again, since a product from elsewhere may never have been set up here.
   * Refuses what it cannot read all at once, then `density-outside-group`, `density-not-converged` at `paths.density`.value.
   */
  readonly findLiquid: (input: FamilyInput, paths: FamilyPaths) => Outcome<FamilyLiquid>
}

/** A liquid whose base density is known: all that quantities, tickets and other corrections ask of it. */
export interface FamilyLiquid {
  /** Standard, edition, table and zone as printed on tickets: `API MPMS 11.1-2004, refined products (gasoline)`. */
  readonly standard: string
  /** Zone, component or method, one word: `gasoline`, `benzene`. */
  readonly subgroup: string
  readonly baseTemperature: BaseTemperature
  /** Density at the base temperature and base pressure, unrounded; as stated, where it was stated there [kg/m³]. */
  readonly baseDensity: number
  /** Density at 60 °F and base pressure, unrounded: °API gravity and relative density are made from it [kg/m³]. */
  readonly density60: number
  /** The density as written where it was stated at base conditions, so that its digits are kept; null where observed. */
  readonly stated: Density | null
  /** Unit in which the density was written; `kg/m3` where the family made it itself. */
  readonly densityUnit: DensityUnit
  /** Density of water at 60 °F of the edition, 999.016 or 999.012 [kg/m³]. */
  readonly water60: number
  /** Where the density was observed, and the factors there; null where it was stated at base conditions. */
  readonly observed: { readonly conditions: Conditions; readonly factors: Factors } | null
  /** How often an iteration ran through; 0 where none was needed. */
  readonly passes: number
  /**
   * Worksheet lines from the density as written to the base density, symbols unique. There must be a line `ρb` in kg/m3
   * or g/cm3 (base density, rounded by `baseDensityIn`), and `ρ60` in kg/m3 where °API or RD may be printed.
   * `readingLines` in `density-reading.ts` makes those of the reading.
   */
  readonly lines: readonly WorksheetLine[]
  /**
   * CTL, CPL and CTPL at conditions that `readConditions` accepted, from base temperature and base pressure.
   * Refuses where the standard has no factor for this density there (`out-of-range` at one of `paths`).
   * `correctionOf` in `correction.ts` rounds the factors and makes the lines `t P CTL CPL CTPL`.
   */
  readonly correct: (conditions: Conditions, paths: ConditionPaths) => Outcome<Correction>
}

/** Factors at one temperature and pressure, unrounded. A family without compressibility has CPL = 1. */
export interface Factors {
  readonly ctl: number
  readonly cpl: number
  /** CTL × CPL. */
  readonly ctpl: number
  /** Density at that temperature and pressure: base density × CTPL [kg/m³]. */
  readonly density: number
}

/** The factors at what was read, rounded as the edition rounds them, with their worksheet lines. */
export interface Correction {
  readonly factors: Factors
  readonly ctl: Rounded
  readonly cpl: Rounded
  /** The product of the unrounded CTL and CPL, rounded once. */
  readonly ctpl: Rounded
  /** Whether the edition multiplies volumes by the rounded or by the unrounded factors. */
  readonly volumesBy: 'rounded' | 'unrounded'
  /** Where the standard gives CTPL, for lines that use it elsewhere. */
  readonly clause: Citation
  /** Symbols `t`, `P`, then what the family has, then `CTL`, `CPL`, `CTPL`; every line from lines above it. */
  readonly lines: readonly WorksheetLine[]
}

/** Temperature and pressure of a liquid as read; no pressure where none was stated. */
export interface Conditions { readonly temperature: Temperature; readonly pressure: Pressure | null }
/** Temperature and pressure as they were written. */
export interface WrittenConditions { readonly temperature: string; readonly pressure?: string | undefined }
/** Where temperature and pressure stood, for findings: `snapshot.temperatures.liquid`. */
export interface ConditionPaths { readonly temperature: string; readonly pressure: string }

/**
 * What a product says beside its commodity, as written; each only where the family asks for it.
 *  - `alpha` (special): thermal expansion factor at 60 °F, `0.000510 /degF`
 *  - `molarMass` (lpg): `44.096 g/mol`, for the vapour
 *  - `component` (chemical): which of the tabulated substances
 *  - `content` (ethanol): share of ethanol by mass, `99.5 %`
 *  - `salinity` (water): practical salinity, `35 PSU`
 *  - `curve` (curve): density or VCF against temperature from a certificate
 *  - `figures` (the 1980 tables): decimals of the factor, `four` as printed or `five`
 */
export interface FamilySettings {
  readonly alpha?: string | undefined
  readonly molarMass?: string | undefined
  readonly component?: string | undefined
  readonly content?: string | undefined
  readonly salinity?: string | undefined
  readonly curve?: ProductCurve | undefined
  readonly figures?: 'four' | 'five' | undefined
}
export type SettingName = keyof FamilySettings
/** Where each setting stood, and the edition: `product.alpha`, `product.edition`. */
export type SettingPaths = { readonly [S in SettingName | 'edition' | 'baseTemperature']: string }

/** The settings with the edition that the product names and its base temperature. */
export interface ProductSettings extends FamilySettings {
  readonly edition: SourceKey
  readonly baseTemperature: BaseTemperature
}

/** What a base density is found from, as it was written. */
export interface FamilyInput extends ProductSettings {
  /** Absent only where the family knows the density itself (curve, water); the others refuse `missing-value`. */
  readonly density?: DensityInput | undefined
}

/** Where the parts of a {@link FamilyInput} stood: the path of `density` (its parts are `….value`, `….temperature`), and of the settings. */
export interface FamilyPaths { readonly density: string; readonly settings: SettingPaths }
