import { Decimal, parseVolume, VOLUME_UNITS } from '../../core/units/index.ts'
import { discriminate } from '../../core/rounding/index.ts'
import type { InputOf } from '../../main/operations/contracts/index.ts'
import { withUnit } from '../gauge/usual-units.ts'
import type { Unshared } from './unshared.ts'

export interface ShareLine { readonly party: string; readonly nsv: string }

/** Shares as they are being written. */
export interface ShareForm { readonly tank: string; readonly product: string; readonly at: string; readonly shares: readonly ShareLine[]; readonly reason: string }

export const EMPTY_SHARES: ShareForm = { tank: '', product: '', at: '', shares: [{ party: '', nsv: '' }, { party: '', nsv: '' }], reason: '' }

/** What is still to be shared out, as text in the unit of the book; undefined as long as a share cannot be read. */
export function restOf(shares: readonly ShareLine[], amount: string, unit: string): string | undefined {
  const known = VOLUME_UNITS.find((one) => one === unit)
  if (known === undefined) return undefined
  let rest = new Decimal(amount)
  for (const { nsv } of shares) {
    if (nsv.trim() === '') continue
    const read = parseVolume(withUnit(nsv, unit), 'share')
    if (!read.ok || read.value.unit !== known) return undefined
    rest = rest.minus(read.value.value)
  }
  const rounded = discriminate(`volume ${known}`, rest)
  return rounded.value.eq(rest) ? rounded.text : rest.toFixed()
}

export function isNothing(text: string): boolean {
  return new Decimal(text).isZero()
}

/** What `allocate-stock` takes; lines without a party are left out. */
export function allocationOf(form: ShareForm, of: Unshared | null, unit: string, at: string | undefined, by: string): InputOf<'allocate-stock'> {
  return {
    ...(of !== null && { of: of.seq }), tank: of?.tank ?? form.tank, product: of?.product ?? form.product, ...(at !== undefined && { at }),
    shares: form.shares.filter(({ party }) => party !== '').map(({ party, nsv }) => ({ party, nsv: withUnit(nsv, unit) })), reason: form.reason, by,
  }
}
