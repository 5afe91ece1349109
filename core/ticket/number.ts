const NUMBER = /^([A-Z][A-Z0-9]{1,7})-(\d{6,15})$/

/**
 * The number of the n-th ticket of a ledger: `CPT-000001`; a millionth simply has one digit more.
 * @param terminalCode code of the terminal
 * @param n 1, 2, 3, … without gaps
 * @source CFR43-3174.12 (b)
 */
export function ticketNumber(terminalCode: string, n: number): string {
  if (!Number.isSafeInteger(n) || n < 1) throw new Error(`${n} cannot be the number of a ticket`)
  return `${terminalCode}-${String(n).padStart(6, '0')}`
}

/**
 * What a ticket number says: the terminal's code and the count; undefined when it is not a ticket number.
 * @param text `CPT-000001`
 * @source CFR43-3174.12 (b)
 */
export function numberOf(text: string): { readonly terminalCode: string; readonly n: number } | undefined {
  const [, terminalCode, digits] = NUMBER.exec(text) ?? []
  if (terminalCode === undefined || digits === undefined) return undefined
  const n = Number(digits)
  return n >= 1 && ticketNumber(terminalCode, n) === text ? { terminalCode, n } : undefined
}
