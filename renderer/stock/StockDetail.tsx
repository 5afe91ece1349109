import { useState, type ReactNode } from 'react'
import { useKey } from '../app/keys.tsx'
import { addressOf, goTo } from '../app/route.ts'
import { useTerminal, useZone } from '../app/TerminalContext.tsx'
import { useQuery } from '../bridge/use-operation.ts'
import { Button } from '../parts/Button.tsx'
import { CallFailed } from '../parts/Findings.tsx'
import { localTime } from '../parts/local-time.ts'
import { Page } from '../parts/Page.tsx'
import { Waiting } from '../parts/Waiting.tsx'
import { PeriodLink } from '../period/LateTable.tsx'
import { words } from '../words/en.ts'
import { StockHead } from './StockHead.tsx'
import { StockLines } from './StockLines.tsx'
import './stock.css'
import { VoidMovementPanel } from './VoidMovementPanel.tsx'
import { VoidNote } from './VoidNote.tsx'

/** A movement as it stands in the ledger: what it books, why, and every gauge it was computed from. */
export function StockDetail({ seq }: { readonly seq: number }): ReactNode {
  const t = words.stock
  const zone = useZone()
  const { now, again: terminalAgain } = useTerminal()
  const [voiding, setVoiding] = useState(false)
  const [state, again] = useQuery('read-stock-movement', { seq }, now.head.hash)
  const back = (): void => goTo(addressOf('stock'))
  useKey('escape', t.back, back, { group: t.title, when: !voiding })
  const found = state.state === 'done' ? state.value : undefined
  return (
    <Page title={found ? t.detail(t.kinds[found.movement.kind], seq) : t.title} actions={<><Button onClick={() => goTo(addressOf('stock', ['owners']))}>{t.toOwners}</Button>{found && !found.voided && <Button does="void-stock-movement" onClick={() => setVoiding(true)}>{t.void}</Button>}<Button keys="Esc" onClick={back}>{t.back}</Button></>}>
      {state.state === 'failed' && <CallFailed error={state.error} onAgain={again} />}
      {state.state === 'running' && <Waiting step={state.step} />}
      {found && (
        <div className="stock-detail">
          <div>
            <VoidNote moved={found} />
            <StockHead kind={found.movement.kind} movement={found.movement} />
            <dl className="facts">
              <div><dt>{t.complete}</dt><dd>{localTime(found.at, zone)}{found.late && <>; {t.concerns} <PeriodLink name={found.late.period} />{t.countsAt(localTime(found.late.bookedAt, zone))}</>}</dd></div>
              <div><dt>{t.columns.reason}</dt><dd>{found.movement.reason}</dd></div>
              {found.movement.reference !== undefined && <div><dt>{t.fields.reference}</dt><dd>{found.movement.reference}</dd></div>}
              <div><dt>{t.entered}</dt><dd>{localTime(found.enteredAt.replace(/\.\d+Z$/, 'Z'), zone)}, {found.by}</dd></div>
              <div><dt>{t.hash}</dt><dd className="digits">{found.hash}</dd></div>
            </dl>
            {(found.movement.exceptions ?? []).length > 0 && <><h2>{t.exceptions}</h2><ul className="checks-exceptions">{(found.movement.exceptions ?? []).map(({ message }) => <li key={message}>{message}</li>)}</ul></>}
          </div>
          <StockLines lines={found.movement.lines ?? []} sheets={found.movement.legs.filter(({ place }) => place === 'tank').map(({ code, openingWorksheet, closingWorksheet }) => ({ code, gauges: { opening: openingWorksheet, closing: closingWorksheet } }))} />
        </div>
      )}
      {found && <VoidMovementPanel moved={found} open={voiding} onClose={() => setVoiding(false)} onVoided={() => { setVoiding(false); again(); terminalAgain() }} />}
    </Page>
  )
}
