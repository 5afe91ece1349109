import { useEffect, type ReactNode } from 'react'
import { useKey } from '../app/keys.tsx'
import { useDesk, type DeskNow } from '../bridge/desk.ts'
import { useAction } from '../bridge/use-operation.ts'
import { words } from '../words/en.ts'

/** Who is at the desk, beside every page; nothing where nobody is on record. */
export function DeskBand(): ReactNode {
  const desk = useDesk()
  return desk?.now.session ? <AtDesk session={desk.now.session} changed={desk.changed} cover={desk.cover} /> : null
}

interface AtDeskProps { readonly session: NonNullable<DeskNow['session']>; readonly changed: (now: DeskNow) => void; readonly cover: () => void }

function AtDesk({ session: { person }, changed, cover }: AtDeskProps): ReactNode {
  const t = words.desk.band
  const [locked, lock] = useAction('lock-desk')
  const [left, leave] = useAction('close-session')
  const doLock = (): void => void lock({})
  const doLeave = (): void => void leave({})
  useEffect(() => { if (locked.state === 'done') changed(locked.value) }, [locked, changed])
  useEffect(() => { if (left.state === 'done') changed(left.value) }, [left, changed])
  // whoever goes leaves nothing to be read, whether the ledger answers or not
  useEffect(() => { if (locked.state === 'failed' || left.state === 'failed') cover() }, [locked.state, left.state, cover])
  useKey('alt+l', t.lockKey, doLock, { group: words.app.everywhere })
  useKey('alt+shift+l', t.leaveKey, doLeave, { group: words.app.everywhere })
  return (
    <div className="at-desk" role="group" aria-label={t.label}>
      <strong>{person.name}</strong>
      <span className="quiet">{words.desk.roleList(person.roles)}</span>
      <span className="at-desk-acts">
        <button type="button" onClick={doLock} title={t.lockKeys}>{t.lock}</button>
        <button type="button" onClick={doLeave} title={t.leaveKeys}>{t.leave}</button>
      </span>
    </div>
  )
}
