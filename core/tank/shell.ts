import { discriminate, type Rounded } from '../rounding/index.ts'
import type { Citation } from '../sources.ts'
import { Decimal, type Temperature, type TemperatureUnit } from '../units/index.ts'
import type { ShellMaterial } from './tank.ts'

interface Expansion { readonly degF: string; readonly degC: string; readonly clause: Citation; readonly note: string }

/**
 * Linear expansion of shell materials, per °F and per °C as listed (one is not the other times 1.8: both are rounded).
 * Mild steel was read in two handbooks that reprint the standard; the three stainless steels are from memory of its list.
 * The 15 °C table that the standard prints was computed with 1.116e-5, the list says 1.12e-5: we use the list.
 */
export const SHELL_EXPANSION: { readonly [M in ShellMaterial]: Expansion } = {
  'mild-carbon-steel': { degF: '0.0000062', degC: '0.0000112', clause: 'MPMS-12.1.1 shell temperature', note: '' },
  'stainless-304': { degF: '0.0000096', degC: '0.0000173', clause: 'MPMS-12.1.1 shell temperature', note: 'coefficient from memory of the standard; confirm it' },
  'stainless-316': { degF: '0.00000883', degC: '0.0000159', clause: 'MPMS-12.1.1 shell temperature', note: 'coefficient from memory of the standard; confirm it' },
  'stainless-17-4PH': { degF: '0.000006', degC: '0.0000108', clause: 'MPMS-12.1.1 shell temperature', note: 'coefficient from memory of the standard; confirm it' },
}

/** The shell temperature and its unit; `rounded` is null where it is the liquid's own and nothing was rounded. */
export interface ShellTemperature { readonly value: Decimal; readonly rounded: Rounded | null; readonly unit: TemperatureUnit }

/** A temperature in another unit, exact as far as 40 digits go. */
export function temperatureIn(temperature: Temperature, unit: TemperatureUnit): Decimal {
  if (temperature.unit === unit) return temperature.value
  return unit === 'degF' ? temperature.value.times('1.8').plus(32) : temperature.value.minus(32).div('1.8')
}

/**
 * Shell temperature, rounded to 1 °F or 0.5 °C by the unit of the liquid temperature.
 *   TSh = (7 × TL + Ta) / 8
 * Insulated: TSh = TL as it was measured; the coarse rounding belongs to the mean, which is an estimate.
 * @param liquid TL, average temperature of the liquid
 * @param ambient Ta, air at the shell, in either unit; undefined for an insulated tank
 * @source MPMS-12.1.1 shell temperature
 * @checked CTSH-SHELLTEMP-01
 * @checked CTSH-INSULATED-01
 */
export function shellTemperature(liquid: Temperature, ambient: Temperature | undefined): ShellTemperature {
  const { unit } = liquid
  if (ambient === undefined) return { value: liquid.value, rounded: null, unit }
  const rounded = discriminate(`TSh ${unit}`, liquid.value.times(7).plus(temperatureIn(ambient, unit)).div(8))
  return { value: rounded.value, rounded, unit }
}

/** CTSh with the coefficient and the difference of temperature it was made from. */
export interface ShellCorrection {
  readonly rounded: Rounded
  readonly alpha: Decimal
  readonly difference: Decimal
  readonly unit: TemperatureUnit
  readonly clause: Citation
  readonly note: string
}

/**
 * CTSh: correction for the effect of temperature on the shell of an upright cylinder, 5 decimals.
 *   CTSh = 1 + 2αΔT + α²ΔT², ΔT = TSh − T of the table
 * @param material decides α, taken per degree of the shell temperature's unit
 * @param shell rounded shell temperature and its unit
 * @param tableBase temperature at which the shell has the table's dimensions, in either unit
 * @source MPMS-12.1.1 CTSh
 * @checked CTSH-FACTOR-01
 */
export function shellCorrection(material: ShellMaterial, shell: { readonly value: Decimal; readonly unit: TemperatureUnit }, tableBase: Temperature): ShellCorrection {
  const expansion = SHELL_EXPANSION[material]
  const alpha = new Decimal(expansion[shell.unit])
  const difference = shell.value.minus(temperatureIn(tableBase, shell.unit))
  const strain = alpha.times(difference)
  return { rounded: discriminate('CTSh', strain.times(2).plus(1).plus(strain.times(strain))), alpha, difference, unit: shell.unit, clause: expansion.clause, note: expansion.note }
}
