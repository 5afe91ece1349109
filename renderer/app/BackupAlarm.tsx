import { useEffect, type ReactNode } from 'react'
import { useQuery } from '../bridge/use-operation.ts'
import { words } from '../words/en.ts'
import { addressOf } from './route.ts'

const EVERY_MS = 60_000

/** In the band as long as the last backup failed: leads to where it is mended. */
export function BackupAlarm(): ReactNode {
  const [state, again] = useQuery('backup-state', {})
  useEffect(() => {
    const timer = setInterval(again, EVERY_MS)
    return () => clearInterval(timer)
  }, [again])
  const failed = state.state === 'done' ? state.value.failed : null
  if (failed === null) return null
  return <a role="alert" className="band-alarm" href={addressOf('storage')} title={words.storage.alarmSays(failed.message)}>{words.storage.alarm}</a>
}
