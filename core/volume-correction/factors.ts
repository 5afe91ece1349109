import { kilogramsPerCubicMetre, type Density } from '../units/index.ts'
import { bandAt, type Subgroup } from './bands.ts'
import type { Liquid } from './base-density.ts'
import { BASE_DEGF, fromBase } from './base-temperature.ts'
import type { BaseTemperature } from './commodity.ts'
import { compressibility, cpl, notNegative } from './cpl.ts'
import { ctl, expansionFactor, shiftedDensity, shiftedDensityByAlpha } from './ctl.ts'
import { definedAt60 } from './density-reading.ts'
import type { Factors } from './family.ts'
import { onIpts68 } from './temperature-scale.ts'

/** A liquid whose base density is known: everything that its factors at any temperature and pressure are made from. */
export interface BaseLiquid extends Liquid {
  readonly baseTemperature: BaseTemperature
  readonly subgroup: Subgroup
  /** Density at 60 °F and 0 psig [kg/m³]. */
  readonly density60: number
  /** The density as written, where it was stated at base conditions and not observed. */
  readonly stated: Density | null
  /** Density at the base temperature and 0 psig; as stated, where it was stated there [kg/m³]. */
  readonly baseDensity: number
  /** Density at 60 °F on IPTS-68, ρ* [kg/m³]. */
  readonly shiftedDensity: number
  /** Thermal expansion factor at 60 °F, given or computed [1/°F]. */
  readonly expansion60: number
  /** CTL from 60 °F to the base temperature; 1 when that is 60 °F. */
  readonly ctlToBase: number
}

/** Factors of a petroleum liquid, with its compressibility. */
export interface PetroleumFactors extends Factors {
  /** Scaled compressibility factor [1e-5/psi]. */
  readonly fp: number
}

/**
 * A liquid from its density at 60 °F: zone, ρ*, α60, and density at the base temperature, ρb = ρ60 CTL(60 → Tb). A
 * density that was stated at the base temperature stays as stated, since ρ60 was only found from it to 10⁻⁶ kg/m³.
 * @param liquid group, and α60 of a special application
 * @param baseTemperature base temperature of the product
 * @param density60 density at 60 °F and 0 psig, within the group's range [kg/m³]
 * @param stated the density that was stated at base conditions; null where it was observed
 * @source MPMS-11.1-2004 11.1.7.2
 * @checked mpms11.1-2004/11.1.7.2/ex1 and following
 */
export function liquidAt60(liquid: Liquid, baseTemperature: BaseTemperature, density60: number, stated: Density | null): BaseLiquid {
  const band = bandAt(liquid.commodity, density60)
  const rhoStar = liquid.alpha60 === null ? shiftedDensity(band, density60) : shiftedDensityByAlpha(liquid.alpha60, density60)
  const expansion60 = liquid.alpha60 ?? expansionFactor(band, rhoStar)
  const ctlToBase = baseTemperature === '60 degF' ? 1 : ctl(expansion60, onIpts68(BASE_DEGF[baseTemperature]))
  const statedAtBase = stated !== null && !definedAt60(stated.unit)
  return {
    commodity: liquid.commodity, alpha60: liquid.alpha60, baseTemperature, subgroup: band.subgroup, density60, stated,
    baseDensity: statedAtBase ? kilogramsPerCubicMetre(stated) : density60 * ctlToBase, shiftedDensity: rhoStar, expansion60, ctlToBase,
  }
}

/**
 * CTL, CPL and CTPL of a liquid at a temperature and pressure, unrounded, from its base temperature and 0 psig:
 *   CTPL = CTL × CPL;  ρ(t, P) = ρb × CTPL
 * Neither range is checked here: {@link readTemperature} and {@link readPressure} do that where a value is read.
 * @param liquid a liquid whose base density is known
 * @param t temperature, −58 … 302 [°F]
 * @param P gauge pressure, up to 1500; negative is taken as 0 [psi]
 * @source MPMS-11.1-2004 11.1.6.1
 * @checked mpms11.1-2004/11.1.6.1/ex1 and following
 */
export function factorsAt(liquid: BaseLiquid, t: number, P: number): PetroleumFactors {
  const tStar = onIpts68(t)
  const fp = compressibility(liquid.shiftedDensity, tStar)
  const CTL = fromBase(ctl(liquid.expansion60, tStar), liquid.ctlToBase)
  const CPL = cpl(fp, notNegative(P))
  const CTPL = CTL * CPL
  return { ctl: CTL, fp, cpl: CPL, ctpl: CTPL, density: liquid.baseDensity * CTPL }
}
