import { Decimal as DecimalJs } from 'decimal.js'

/** Decimals for everything that is booked: 40 digits, own settings, never the library's global ones. */
export const Decimal = DecimalJs.clone({ precision: 40, rounding: DecimalJs.ROUND_HALF_UP, toExpNeg: -30, toExpPos: 30 })
export type Decimal = DecimalJs
