import { useState, type ReactNode } from 'react'
import { addressOf } from '../app/route.ts'
import { useZone, type TerminalNow } from '../app/TerminalContext.tsx'
import { FaultInMain, RefusedByMain } from '../bridge/bridge.ts'
import { useAction } from '../bridge/use-operation.ts'
import type { OutputOf } from '../../main/operations/contracts/index.ts'
import { Button } from '../parts/Button.tsx'
import { EnteredByField } from '../parts/EnteredByField.tsx'
import { LongTextField, SelectField, TextField } from '../parts/Field.tsx'
import { Figure } from '../parts/Figure.tsx'
import { localTime, readLocalTime } from '../parts/local-time.ts'
import { placeFindings, type FieldPlace } from '../parts/place-findings.ts'
import { SheetPanel } from '../parts/SheetPanel.tsx'
import { useEnteredBy } from '../parts/use-entered-by.ts'
import { words } from '../words/en.ts'
import { ApportionFields } from './ApportionFields.tsx'
import { allocationOf, EMPTY_SHARES, isNothing, restOf, type ShareForm, type ShareLine } from './share-form.ts'
import { kindOf, type Unshared } from './unshared.ts'

interface SharePanelProps {
  /** What is shared out; null for a change of owner in place. */
  readonly of: Unshared | null
  readonly now: TerminalNow
  readonly places: OutputOf<'owners-stock'>['places']
  readonly onClose: () => void
  readonly onDone: (seq: number) => void
}

/** Shares of what was booked, or of nothing where product changes hands in place. */
export function SharePanel({ of, now, places, onClose, onDone }: SharePanelProps): ReactNode {
  const t = words.stock.own.panel
  const zone = useZone()
  const [form, setForm] = useState<ShareForm>(EMPTY_SHARES)
  const [by, setBy] = useEnteredBy()
  const [state, run, cancel] = useAction('allocate-stock')
  const place = places.find(({ tank, product }) => tank === form.tank && product === form.product)
  const unit = of?.nsv.unit ?? place?.book.unit ?? ''
  const time = readLocalTime(form.at, zone)
  const rest = restOf(form.shares, of?.nsv.value ?? '0', unit)
  const placed = placeFindings(state.state === 'failed' && state.error instanceof RefusedByMain ? state.error.findings : [], placesOf(form.shares))
  const set = (parts: Partial<ShareForm>): void => setForm((before) => ({ ...before, ...parts }))
  const write = (at: number, parts: Partial<ShareLine>): void => set({ shares: form.shares.map((one, i) => (i === at ? { ...one, ...parts } : one)) })
  const ready = form.shares.some(({ party }) => party !== '') && form.reason.trim() !== '' && by.trim() !== '' && rest !== undefined && isNothing(rest) && (of !== null ? form.at.trim() === '' || time.ok : time.ok && place !== undefined)
  const submit = async (): Promise<void> => {
    const done = await run(allocationOf(form, of, unit, time.ok ? time.instant : undefined, by))
    if (done) onDone(done.seq)
  }
  const title = of === null ? t.inPlace : t.title(`${kindOf(of)}${of.number === '' ? '' : ` ${of.number}`}, ${of.tank}`)
  return (
    <SheetPanel title={title} open onClose={() => { cancel(); onClose() }} width={560} does="allocate-stock" state={state} submit={t.submit} onSubmit={() => void submit()} busy={state.state === 'running'} ready={ready} others={placed.others}
      fault={state.state === 'failed' && state.error instanceof FaultInMain ? state.error : undefined}
      says={<p>{of === null ? t.saysInPlace : <>{t.says} <Figure value={of.nsv.value} unit={of.nsv.unit} signed /> {of.product}, {localTime(of.bookedAt, zone)}. {linkOf(of)}</>}</p>}>
      {of === null && (
        <div className="sheet-row">
          <SelectField id="share-place" label={t.place} value={place ? `${form.tank}\n${form.product}` : ''} placeholder={words.stock.choose} choices={places.map(({ tank, product }) => ({ value: `${tank}\n${product}`, label: `${tank}  ${product}` }))}
            onChange={(value) => { const [tank = '', product = ''] = value.split('\n'); set({ tank, product }) }} error={placed.errors.get('share-place')} />
          <TextField id="share-at" label={`${t.at}, ${zone}`} value={form.at} placeholder={words.gauge.timeHint} onChange={(at) => set({ at })} error={placed.errors.get('share-at') ?? (form.at.length >= 16 && !time.ok ? words.month.period.wrong[time.why] : undefined)} />
        </div>
      )}
      {of !== null && (of.kind === 'adjustment' || of.kind === 'correction') && <ApportionFields of={of} onProposed={(shares) => set({ shares })} />}
      <div className="shares">
        {form.shares.map(({ party, nsv }, i) => [
          <SelectField key={`${i} party`} id={`share-${i}-party`} label={t.party(i + 1)} value={party} placeholder={words.stock.choose} choices={now.parties.map(({ code, name }) => ({ value: code, label: `${code}  ${name}` }))} onChange={(value) => write(i, { party: value })} error={placed.errors.get(`share-${i}-party`)} />,
          <TextField key={`${i} nsv`} id={`share-${i}-nsv`} label={t.share(i + 1)} measured value={nsv} placeholder={unit} onChange={(value) => write(i, { nsv: value })} error={placed.errors.get(`share-${i}-nsv`)} />,
          <Button key={`${i} rest`} disabled={rest === undefined || isNothing(rest)} onClick={() => { const left = restOf(form.shares.filter((_, other) => other !== i), of?.nsv.value ?? '0', unit); if (left !== undefined) write(i, { nsv: `${left} ${unit}` }) }}>{t.takeRest}</Button>,
        ])}
      </div>
      <p className="shares-rest">{rest === undefined || unit === '' ? '' : isNothing(rest) ? t.restNone : <><strong><Figure value={rest} unit={unit} signed /></strong> {t.rest}</>} <Button onClick={() => set({ shares: [...form.shares, { party: '', nsv: '' }] })}>{t.add}</Button></p>
      <LongTextField id="share-reason" label={t.reason} value={form.reason} onChange={(reason) => set({ reason })} error={placed.errors.get('share-reason')} />
      <EnteredByField id="share-by" label={t.by} value={by} onChange={setBy} error={placed.errors.get('share-by')} />
    </SheetPanel>
  )
}

function linkOf({ kind, seq, number }: Unshared): ReactNode {
  if (kind === 'receipt' || kind === 'delivery') return <a href={addressOf('register', [number])}>{number}</a>
  return kind in words.stock.kinds ? <a href={addressOf('stock', ['moved', String(seq)])}>{words.stock.columns.seq} {seq}</a> : null
}

function placesOf(shares: readonly ShareLine[]): Readonly<Record<string, FieldPlace>> {
  const t = words.stock.own.panel
  // lines without a party are not sent, so that the places of those that are move up
  const sent = shares.flatMap(({ party }, i) => (party === '' ? [] : [i]))
  return {
    tank: { id: 'share-place', label: t.place }, product: { id: 'share-place', label: t.product }, at: { id: 'share-at', label: t.at }, reason: { id: 'share-reason', label: t.reason }, by: { id: 'share-by', label: t.by },
    ...Object.fromEntries(sent.flatMap((i, at) => [[`shares.${at}.party`, { id: `share-${i}-party`, label: t.party(i + 1) }], [`shares.${at}.nsv`, { id: `share-${i}-nsv`, label: t.share(i + 1) }]])),
  }
}
