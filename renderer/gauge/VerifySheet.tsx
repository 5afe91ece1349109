import { useMemo, useReducer, type ReactNode } from 'react'
import { verifyGauge } from '../../core/gauge/index.ts'
import { useKey } from '../app/keys.tsx'
import { addressOf, goTo } from '../app/route.ts'
import { useTankAtHand } from '../app/tank-at-hand.tsx'
import { useTerminal, useZone } from '../app/TerminalContext.tsx'
import { RefusedByMain } from '../bridge/bridge.ts'
import { useAction } from '../bridge/use-operation.ts'
import { Button } from '../parts/Button.tsx'
import { enterMovesOn } from '../parts/Field.tsx'
import { CallFailed } from '../parts/Findings.tsx'
import { Page } from '../parts/Page.tsx'
import { useEnteredBy } from '../parts/use-entered-by.ts'
import { WorksheetTable } from '../parts/WorksheetTable.tsx'
import { words } from '../words/en.ts'
import { Cautions } from './Cautions.tsx'
import { DiscardButton } from './DiscardButton.tsx'
import { KeptNote } from './KeptNote.tsx'
import { nameOfVerifyField, placeSpokenVerification, placeVerification } from './place-verification.ts'
import { SheetChecks } from './SheetChecks.tsx'
import { useAutosave } from './use-autosave.ts'
import { useCalmErrors } from './use-calm-errors.ts'
import { usualUnits } from './usual-units.ts'
import { openVerification, STAGES, verificationFrom, verifySheetReducer, type VerifyForm } from './verify-form.ts'
import './verify.css'
import { VerifyFields } from './VerifyFields.tsx'
import { VerifyLevels } from './VerifyLevels.tsx'

/** The sheet of one verification: an automatic gauge held against hand gauges, and entered in the book. */
export function VerifySheet({ id, start }: { readonly id: string; readonly start: VerifyForm }): ReactNode {
  const { now, again } = useTerminal()
  const zone = useZone()
  const t = words.gauge.verify
  const [history, act] = useReducer(verifySheetReducer, start, openVerification)
  const form = history.present
  const [enteredBy, enterBy] = useEnteredBy()
  const tank = now.tanks.find(({ code }) => code === form.tank)
  useTankAtHand(form.tank)
  const units = usualUnits(tank, now.products.find(({ code }) => code === tank?.product))
  const read = useMemo(() => verificationFrom(form, zone, units), [form, zone, units])
  const outcome = useMemo(() => (tank ? verifyGauge(read.verification, tank) : undefined), [read, tank])
  const [recorded, record] = useAction('record-gauge-verification')
  const [, discardDraft] = useAction('discard-draft')
  const [kept, holdDraft] = useAutosave({ id, kind: 'verification', title: t.draftTitle(form.tank, form.gauge), body: form })
  const placed = placeVerification(outcome && !outcome.ok ? outcome.findings : [], form, read)
  const refusedThere = recorded.state === 'failed' && recorded.error instanceof RefusedByMain ? placeSpokenVerification(recorded.error.findings) : []
  const calm = useCalmErrors([...placed.findings, ...refusedThere])
  const missing = [...(form.tank === '' ? ['verify.tank'] : []), ...placed.missing, ...(enteredBy.trim() === '' ? ['entered-by'] : [])]
  const ready = outcome?.ok === true && placed.findings.length === 0 && missing.length === 0 && recorded.state !== 'running'
  const book = async (): Promise<void> => {
    if (!ready) return
    holdDraft(true)
    if (!await record({ verification: read.verification, by: enteredBy })) return holdDraft(false)
    await discardDraft({ id })
    again()
  }
  const discard = async (): Promise<void> => {
    holdDraft(true)
    await discardDraft({ id })
    goTo(addressOf('yard', form.tank === '' ? [] : ['tank', form.tank]))
  }
  useKey('ctrl+enter', t.record, () => void book(), { group: t.title, does: 'record-gauge-verification' })
  useKey('ctrl+z', words.transfer.undo, () => act({ do: 'undo' }), { group: t.title })
  useKey('ctrl+shift+z', words.transfer.redo, () => act({ do: 'redo' }), { group: t.title })
  const result = outcome?.ok ? outcome.value : undefined
  if (recorded.state === 'done') {
    const { seq, result: entered } = recorded.value
    return (
      <Page title={t.title} actions={<Button primary onClick={() => goTo(addressOf('yard', ['tank', form.tank]))}>{t.toTank(form.tank)}</Button>}>
        <p role="status">{t.recorded(seq, form.gauge, entered.verdict)}</p>
        <div className="inventory-done"><WorksheetTable columns={[{ title: words.parts.worksheet.value, lines: entered.lines }]} /></div>
      </Page>
    )
  }
  return (
    <Page title={t.title} about={<KeptNote kept={kept} />} actions={
      <>
        <Button disabled={history.past.length === 0} onClick={() => act({ do: 'undo' })}>{words.transfer.undo}</Button>
        <Button disabled={history.future.length === 0} onClick={() => act({ do: 'redo' })}>{words.transfer.redo}</Button>
        <DiscardButton onDiscard={() => void discard()} />
        <Button primary does="record-gauge-verification" disabled={!ready} keys="Ctrl+Enter" onClick={() => void book()}>{t.record}</Button>
      </>
    }>
      <div className="verify" onFocus={calm.onFocus} onBlur={calm.onBlur}>
        <section className="verify-sheet" aria-label={t.sheetLabel} onKeyDown={enterMovesOn}>
          <VerifyFields form={form} tanks={now.tanks} zone={zone} errors={calm.errors} enteredBy={enteredBy} onEnteredBy={enterBy} act={act} />
          {STAGES.filter((stage) => form[stage].length > 0).map((stage) => (
            <VerifyLevels key={stage} stage={stage} form={form} result={result?.[stage]} units={units} errors={calm.errors} act={act} />
          ))}
          <Button onClick={() => act({ do: 'was-set', set: form.asLeft.length === 0 })}>{form.asLeft.length === 0 ? t.wasSet : t.notSet}</Button>
          <Cautions />
        </section>
        <section className="verify-result" aria-label={words.transfer.worksheetLabel}>
          <p className={`verify-verdict${result?.verdict === 'outside' ? ' verify-outside' : ''}`} aria-live="polite">{result ? t.verdicts[result.verdict] : t.noVerdict}</p>
          <div className="inventory-lines" tabIndex={0} role="region" aria-label={words.parts.worksheet.unfold}><WorksheetTable columns={[{ title: words.parts.worksheet.value, lines: result?.lines ?? [] }]} /></div>
          {recorded.state === 'failed' && refusedThere.length === 0 && <CallFailed error={recorded.error} />}
          <SheetChecks findings={calm.shown} missing={missing} nameOf={(field) => (field === 'entered-by' ? words.gauge.enteredBy : nameOfVerifyField(field))} ready={t.allThere} exceptions={result?.exceptions ?? []} />
        </section>
      </div>
    </Page>
  )
}
