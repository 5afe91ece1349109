const TONS: Readonly<Record<string, string>> = { 'short-ton': 'short tons', 'long-ton': 'long tons' }

/**
 * A unit word as it is set for people: `m³`, `°F`, `bbl/°API`.
 * @param unit as it is kept and typed
 */
export function printedUnit(unit: string): string {
  return TONS[unit] ?? unit.replace(/\bdeg(C|F|API)\b/g, '°$1').replace(/\b(c?m)3\b/g, '$1³')
}

/**
 * A value that was written with its unit, with the unit as it is set for people: `20.0 degC` reads 20.0 °C. Other words stay.
 * @param text `number unit`, or a sentence with some of them
 */
export function printedUnits(text: string): string {
  return text.replace(/(?<=\d ?)(?:(?:bbl)?\/?deg(?:C|F|API)|[a-z]*\/?c?m3|(?:short|long)-ton)\b/g, printedUnit)
}
