import { expect, it } from 'vitest'
import { printedUnit, printedUnits } from '../../../core/units/index.ts'

/** m³ and °C as in the SI brochure, 9th edition, tables 2 and 4; the others by common practice, no source. */
it.each([
  ['m3', 'm³'], ['kg/m3', 'kg/m³'], ['g/cm3', 'g/cm³'], ['degC', '°C'], ['degF', '°F'], ['degAPI', '°API'], ['bbl/degAPI', 'bbl/°API'], ['short-ton', 'short tons'], ['bbl', 'bbl'], ['mm', 'mm'], ['', ''],
])('the unit %s is set as %s', (unit, printed) => {
  expect(printedUnit(unit)).toBe(printed)
})

it.each([
  ['20.0 degC', '20.0 °C'], ['19.2 °C', '19.2 °C'], ['68 degF', '68 °F'], ['', ''],
  ['Adjustment of TK-301 by -12.300 m3: 832.1 kg/m3 at 15 degC', 'Adjustment of TK-301 by -12.300 m³: 832.1 kg/m³ at 15 °C'],
  ['24.59 bbl/degAPI and 0.0005 /degF', '24.59 bbl/°API and 0.0005 /°F'],
  // a word is a unit behind a figure only
  ['valve m3 of line degC', 'valve m3 of line degC'], ['5 m300', '5 m300'],
])('“%s” reads “%s”', (text, printed) => {
  expect(printedUnits(text)).toBe(printed)
})
