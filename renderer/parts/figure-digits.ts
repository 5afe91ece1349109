/** The digits of a figure, cut into the groups in which they are read. */
export interface FigureDigits {
  readonly sign: string
  /** Whole digits in threes, highest first. */
  readonly groups: readonly string[]
  readonly fraction: string
}

/** Cuts decimal text for display; what is not plain decimal text stays in one group. */
export function figureDigits(value: string, signed = false): FigureDigits {
  const match = /^([+-]?)(\d+)(?:\.(\d+))?$/.exec(value.trim())
  if (!match) return { sign: '', groups: [value], fraction: '' }
  const [, sign = '', whole = '', fraction = ''] = match
  const groups: string[] = []
  for (let end = whole.length; end > 0; end -= 3) groups.unshift(whole.slice(Math.max(0, end - 3), end))
  const zero = /^0*$/.test(whole + fraction)
  return { sign: sign === '-' ? '−' : signed && !zero ? '+' : '', groups, fraction }
}

/** Whether decimal text stands for less than, exactly or more than nothing. */
export function signOf(value: string): 'loss' | 'none' | 'gain' {
  if (/^[+-]?[0.]*$/.test(value)) return 'none'
  return value.startsWith('-') ? 'loss' : 'gain'
}
