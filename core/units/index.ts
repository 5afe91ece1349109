/**
 * Units: what people write becomes a value with its unit and keeps its text; conversion and printing.
 * In: text. Out: {@link Measured}. MPMS-11.1-2004 11.1.5.1, NIST-HB44-C.
 */
export { inCalendar } from './calendar.ts'
export { Decimal } from './decimal.ts'
export { parseDensity, kilogramsPerCubicMetre, densityIn, printDensity, WATER_AT_60F, type Density, type DensityUnit } from './density.ts'
export { parseExpansion, perDegF, printExpansion, type Expansion, type ExpansionUnit } from './expansion.ts'
export { parsePercent, printPercent, type Percent } from './fraction.ts'
export { lengthFromMillimetres, millimetres, parseLength, printLength, type Length, type LengthUnit } from './length.ts'
export { kilograms, massIn, MASS_UNITS, parseMass, printMass, type Mass, type MassUnit } from './mass.ts'
export { plainText, printMeasured, readMeasured, writtenDigits, type Measured, type UnitWords } from './measured-value.ts'
export { kilopascalsGauge, KPA_PER_PSI, parsePressure, printPressure, psig, STANDARD_ATMOSPHERE, type Pressure, type PressureUnit } from './pressure.ts'
export { printedUnit, printedUnits } from './printed-unit.ts'
export { degC, degF, parseTemperature, printTemperature, type DegC, type DegF, type Temperature, type TemperatureUnit } from './temperature.ts'
export { convertVolume, cubicMetresPer, parseVolume, printVolume, VOLUME_UNITS, type Volume, type VolumeUnit } from './volume.ts'
