import { z } from 'zod'
import type { GaugeVerification } from '../../core/gauge/index.ts'
import { VERIFICATION_RULES, VERIFICATION_USES } from '../../core/gauge/index.ts'
import { readLocalTime, type ReadTime } from '../parts/local-time.ts'
import { begun, edited, redone, undone, type History } from './history.ts'
import { withUsualUnit, type UsualUnits } from './usual-units.ts'

const text = z.string().max(500)
const MOST_LEVELS = 9
/** One level: what the automatic gauge showed, and up to three readings by hand. */
const lineSchema = z.strictObject({ automatic: text, hand: z.tuple([text, text, text]), referenceHeight: text })
export type VerifyLine = Readonly<z.infer<typeof lineSchema>>
export type VerifyPart = 'automatic' | 'hand.0' | 'hand.1' | 'hand.2' | 'referenceHeight'
export const STAGES = ['asFound', 'asLeft'] as const
export type Stage = (typeof STAGES)[number]

const CHOICES = { use: VERIFICATION_USES, rule: VERIFICATION_RULES, occasion: ['initial', 'subsequent'], handBy: ['innage', 'ullage'] } as const

/** A verification as it is being written: text, and nothing invented; what a draft keeps. */
export const verifyFormSchema = z.strictObject({
  tank: text, gauge: text, at: text, by: text, nextDue: text, remarks: text,
  use: z.enum(CHOICES.use), rule: z.enum(CHOICES.rule), occasion: z.enum(CHOICES.occasion), handBy: z.enum(CHOICES.handBy),
  asFound: z.array(lineSchema).max(MOST_LEVELS),
  asLeft: z.array(lineSchema).max(MOST_LEVELS),
})
export type VerifyForm = Readonly<z.infer<typeof verifyFormSchema>>

export type VerifyField = Exclude<keyof VerifyForm, Stage>
const EMPTY_LINE: VerifyLine = { automatic: '', hand: ['', '', ''], referenceHeight: '' }

/** A first verification for custody at three levels, with nothing written. */
export function newVerification(tank: string): VerifyForm {
  return {
    tank, gauge: '', at: '', by: '', nextDue: '', remarks: '', use: 'custody', rule: 'MPMS-3.1B', occasion: 'initial', handBy: 'innage',
    asFound: [EMPTY_LINE, EMPTY_LINE, EMPTY_LINE], asLeft: [],
  }
}

/** The draft in which a verification of a tank was begun; undefined where none was. */
export function keptVerification(drafts: readonly { readonly id: string; readonly kind: string; readonly body: unknown }[], tank: string): string | undefined {
  return drafts.find(({ kind, body }) => {
    const form = kind === 'verification' ? verifyFormSchema.safeParse(body) : undefined
    return form?.success === true && form.data.tank === tank
  })?.id
}

export type VerifyAction =
  | { readonly do: 'write'; readonly field: VerifyField; readonly value: string }
  | { readonly do: 'write-line'; readonly stage: Stage; readonly at: number; readonly part: VerifyPart; readonly value: string }
  | { readonly do: 'add-level'; readonly stage: Stage }
  | { readonly do: 'drop-level'; readonly stage: Stage; readonly at: number }
  | { readonly do: 'was-set'; readonly set: boolean }

/** What is done on the sheet: an action, or a step back or forth. */
export type VerifySheetAction = VerifyAction | { readonly do: 'undo' } | { readonly do: 'redo' }

export function openVerification(form: VerifyForm): History<VerifyForm> {
  return begun(form)
}

/** The sheet after an action; what is written in one field in a row is one step back. */
export function verifySheetReducer(history: History<VerifyForm>, action: VerifySheetAction): History<VerifyForm> {
  if (action.do === 'undo') return undone(history)
  if (action.do === 'redo') return redone(history)
  const field = action.do === 'write' ? action.field : action.do === 'write-line' ? `${action.stage}.${action.at}.${action.part}` : null
  return edited(history, verifyReducer(history.present, action), field)
}

/** The verification after an action. */
export function verifyReducer(form: VerifyForm, action: VerifyAction): VerifyForm {
  switch (action.do) {
    case 'write': return written(form, action.field, action.value)
    case 'write-line': return { ...form, [action.stage]: form[action.stage].map((line, i) => (i === action.at ? withPart(line, action.part, action.value) : line)) }
    case 'add-level': return form[action.stage].length >= MOST_LEVELS ? form : { ...form, [action.stage]: [...form[action.stage], EMPTY_LINE] }
    case 'drop-level': return { ...form, [action.stage]: form[action.stage].filter((_, i) => i !== action.at) }
    case 'was-set': return { ...form, asLeft: action.set ? form.asFound.map(() => EMPTY_LINE) : [] }
  }
}

function written(form: VerifyForm, field: VerifyField, value: string): VerifyForm {
  if (!(field in CHOICES)) return { ...form, [field]: value }
  const offered: readonly string[] = CHOICES[field as keyof typeof CHOICES]
  return offered.includes(value) ? { ...form, [field]: value } : form
}

function withPart(line: VerifyLine, part: VerifyPart, value: string): VerifyLine {
  if (part === 'automatic' || part === 'referenceHeight') return { ...line, [part]: value }
  const [first, second, third] = line.hand
  return { ...line, hand: part === 'hand.0' ? [value, second, third] : part === 'hand.1' ? [first, value, third] : [first, second, value] }
}

/** The verification on the sheet, as the operation takes it; bare numbers with the unit of the tank's table. */
export function verificationFrom(form: VerifyForm, zone: string, units: UsualUnits): { readonly verification: GaugeVerification; readonly time: ReadTime; readonly due: ReadTime } {
  const [time, due] = [readLocalTime(form.at, zone), readLocalTime(form.nextDue, zone)]
  const level = (text: string): string => withUsualUnit(text, 'level', units)
  const lines = (stage: Stage): GaugeVerification['asFound'] => form[stage].map(({ automatic, hand, referenceHeight }) => {
    const readings = hand.filter((text) => text.trim() !== '').map((text) => ({ read: level(text) }))
    const seen = form.handBy === 'ullage' && referenceHeight.trim() !== '' ? { observedReferenceHeight: level(referenceHeight) } : {}
    return { automatic: level(automatic), hand: readings.length > 1 ? { by: form.handBy, readings, ...seen } : single(form.handBy, level(hand.find((text) => text.trim() !== '') ?? ''), seen) }
  })
  return {
    time, due,
    verification: {
      tank: form.tank, gauge: form.gauge.trim(), at: time.ok ? time.instant : form.at, by: form.by, use: form.use, rule: form.rule, occasion: form.occasion,
      asFound: lines('asFound'), ...(form.asLeft.length > 0 && { asLeft: lines('asLeft') }),
      ...(form.nextDue.trim() !== '' && { nextDue: due.ok ? due.instant : form.nextDue }), ...(form.remarks.trim() !== '' && { remarks: form.remarks }),
    },
  }
}

function single(by: 'innage' | 'ullage', text: string, seen: { readonly observedReferenceHeight?: string }): GaugeVerification['asFound'][number]['hand'] {
  return by === 'innage' ? { innage: text } : { ullage: text, ...seen }
}
