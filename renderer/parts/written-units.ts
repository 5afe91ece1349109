/** A temperature as it was written, with the sign for degrees: `20.0 degC` reads 20.0 °C. */
export function withDegreeSign(text: string): string {
  return text.replace(/\bdeg([CF])\b/, '°$1')
}
