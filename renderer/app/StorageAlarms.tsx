import { useEffect, type ReactNode } from 'react'
import { useQuery } from '../bridge/use-operation.ts'
import { placeFacts } from '../storage/storage-facts.ts'
import { words } from '../words/en.ts'
import { addressOf } from './route.ts'

const EVERY_MS = 60_000

/** In the band as long as the last backup failed, the disk is nearly full or the clock is wrong: leads to where it is said how to mend it. */
export function StorageAlarms(): ReactNode {
  const t = words.storage
  const [backups, askBackups] = useQuery('backup-state', {})
  const [storage, askStorage] = useQuery('storage', {})
  useEffect(() => {
    const timer = setInterval(() => { askBackups(); askStorage() }, EVERY_MS)
    return () => clearInterval(timer)
  }, [askBackups, askStorage])
  const failed = backups.state === 'done' ? backups.value.failed : null
  const facts = storage.state === 'done' ? placeFacts(storage.value) : []
  const wrong = (name: string): string | undefined => facts.find((fact) => fact.name === name && fact.wrong === true)?.value
  const alarms = [
    { word: t.alarm, says: failed === null ? undefined : t.alarmSays(failed.message) },
    { word: t.scarce, says: wrong(t.facts.room) }, { word: t.clockOff, says: wrong(t.facts.clock) },
  ]
  return <>{alarms.map(({ word, says }) => says !== undefined && <a key={word} role="alert" className="band-alarm" href={addressOf('storage')} title={says}>{word}</a>)}</>
}
