import { useState, type ReactNode } from 'react'
import { useKey } from '../app/keys.tsx'
import { addressOf, goTo, type Route } from '../app/route.ts'
import { useTerminal, useZone } from '../app/TerminalContext.tsx'
import { Button } from '../parts/Button.tsx'
import { download, fileAsBase64 } from '../parts/download.ts'
import { CallFailed } from '../parts/Findings.tsx'
import { Page } from '../parts/Page.tsx'
import { callError } from '../bridge/use-operation.ts'
import type { FaultInMain, RefusedByMain } from '../bridge/bridge.ts'
import { words } from '../words/en.ts'
import { registerCsv } from './register-csv.ts'
import { NO_FILTER, readFilter } from './register-filter.ts'
import { RegisterFilters, SEARCH_ID } from './RegisterFilters.tsx'
import { RegisterTable } from './RegisterTable.tsx'
import { TicketDetail } from './TicketDetail.tsx'
import { useRegister } from './use-register.ts'
import './register.css'

/** The register of tickets, and the one that is looked at beside it. */
export function RegisterPage({ route }: { readonly route: Route }): ReactNode {
  const t = words.register
  const zone = useZone()
  const { now } = useTerminal()
  const [filter, setFilter] = useState(() => ({ ...NO_FILTER, tank: route.query['tank'] ?? '' }))
  const [csvError, setCsvError] = useState<RefusedByMain | FaultInMain | null>(null)
  const { input, wrong } = readFilter(filter, zone)
  const { list, next, again, all } = useRegister(input, now.head.hash)
  const number = route.rest[0] ?? ''
  // what nobody answered is not known to be empty
  const empty = !list.asking && list.error === null
  const saveCsv = async (): Promise<void> => {
    setCsvError(null)
    try {
      const blob = new Blob([registerCsv(await all())], { type: 'text/csv' })
      download({ name: 'register.csv', type: 'text/csv', file: await fileAsBase64(blob) })
    } catch (error) {
      setCsvError(callError(error))
    }
  }
  const close = (): void => goTo(addressOf('register'))
  useKey('/', t.keys.search, () => document.getElementById(SEARCH_ID)?.focus(), { group: t.title })
  return (
    <Page title={t.title} about={list.lines.length > 0 || empty ? t.shown(list.lines.length, list.more) : list.error === null ? t.asking : undefined} actions={<Button disabled={list.lines.length === 0} onClick={() => void saveCsv()}>{t.csv}</Button>}>
      <div className={number === '' ? 'register' : 'register register-beside'}>
        <div className="register-list">
          <RegisterFilters filter={filter} wrong={wrong} onChange={setFilter} />
          {list.error && <CallFailed error={list.error} onAgain={again} />}
          {csvError && <CallFailed error={csvError} />}
          {(list.lines.length > 0 || empty) && <RegisterTable lines={list.lines} selected={number} narrow={number !== ''} onChoose={(line) => goTo(addressOf('register', [line.number]))} />}
          {list.more && <div className="register-more"><Button disabled={list.asking} onClick={next}>{t.more}</Button></div>}
        </div>
        {number !== '' && <TicketDetail key={number} number={number} onClose={close} onVoided={again} />}
      </div>
    </Page>
  )
}
