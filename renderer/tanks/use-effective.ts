import { useState } from 'react'
import { useZone } from '../app/TerminalContext.tsx'
import { readLocalTime, type ReadTime } from '../parts/local-time.ts'
import { useEnteredBy } from '../parts/use-entered-by.ts'
import { words } from '../words/en.ts'

interface Effective {
  readonly typed: string
  readonly type: (text: string) => void
  readonly read: ReadTime
  /** What is wrong with what was typed, once it is long enough to be a time. */
  readonly error: string | undefined
  readonly by: string
  readonly setBy: (name: string) => void
  /** The instant to enter, once time and name are there. */
  readonly ready: { readonly effectiveFrom: string; readonly by: string } | undefined
}

/** From when a version counts, and who enters it: the last two fields of every sheet of the yard. */
export function useEffective(): Effective {
  const zone = useZone()
  const [typed, type] = useState('')
  const [by, setBy] = useEnteredBy()
  const read = readLocalTime(typed, zone)
  return {
    typed, type, read, by, setBy, error: typed.length >= 16 && !read.ok ? words.yard.time[read.why] : undefined,
    ready: read.ok && by.trim() !== '' ? { effectiveFrom: read.instant, by } : undefined,
  }
}
