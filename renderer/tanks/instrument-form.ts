import { INSTRUMENT_KINDS, type Instrument } from '../../core/ledger/index.ts'
import type { FieldPlace } from '../parts/place-findings.ts'
import { words } from '../words/en.ts'

/** An instrument as it is being written. */
export interface InstrumentForm {
  readonly code: string; readonly kind: Instrument['kind']; readonly tank: string; readonly serial: string; readonly expandedUncertainty: string
  readonly certificate: string; readonly verifyEveryDays: string; readonly inService: 'yes' | 'no'; readonly remarks: string
}

export function instrumentForm(instrument: Instrument | undefined): InstrumentForm {
  const { code = '', kind = 'automatic-level', tank = '', serial = '', expandedUncertainty = '', certificate = '', verifyEveryDays, inService = true, remarks = '' } = instrument ?? {}
  return { code, kind, tank, serial, expandedUncertainty, certificate, verifyEveryDays: verifyEveryDays === undefined ? '' : String(verifyEveryDays), inService: inService ? 'yes' : 'no', remarks }
}

/** Whether the days can be read: empty, or a whole number from 1 to 3660. */
export function daysRead(text: string): boolean {
  return text.trim() === '' || (/^\d{1,4}$/.test(text.trim()) && Number(text) >= 1 && Number(text) <= 3660)
}

/** The instrument on the sheet; what is empty is left out. */
export function instrumentOf(form: InstrumentForm): Instrument {
  const given = <K extends string>(key: K, text: string): Partial<Record<K, string>> => (text.trim() === '' ? {} : { [key]: text.trim() } as Partial<Record<K, string>>)
  return {
    code: form.code.trim(), kind: INSTRUMENT_KINDS.find((kind) => kind === form.kind) ?? 'automatic-level', inService: form.inService === 'yes',
    ...given('tank', form.tank), ...given('serial', form.serial), ...given('expandedUncertainty', form.expandedUncertainty), ...given('certificate', form.certificate), ...given('remarks', form.remarks),
    ...(form.verifyEveryDays.trim() !== '' && { verifyEveryDays: Number(form.verifyEveryDays) }),
  }
}

const t = words.stock.instruments.form
export const INSTRUMENT_PLACES: Readonly<Record<string, FieldPlace>> = {
  'instrument.code': { id: 'instrument-code', label: t.code }, 'instrument.tank': { id: 'instrument-tank', label: t.tank }, 'instrument.verifyEveryDays': { id: 'instrument-every', label: t.every },
  'instrument.serial': { id: 'instrument-serial', label: t.serial }, 'instrument.certificate': { id: 'instrument-certificate', label: t.certificate },
  effectiveFrom: { id: 'set-from', label: words.yard.tankForm.effectiveFrom }, by: { id: 'set-by', label: words.yard.tankForm.by },
}
