import type { ReactNode } from 'react'
import { useZone } from '../app/TerminalContext.tsx'
import { localTime } from '../parts/local-time.ts'
import { words } from '../words/en.ts'
import type { Kept } from './use-autosave.ts'

/** Says quietly that the draft is kept; not quietly when it is not. */
export function KeptNote({ kept }: { readonly kept: Kept }): ReactNode {
  const zone = useZone()
  const text = kept.state === 'saved' ? words.transfer.kept.saved(localTime(kept.at.replace(/:\d{2}(\.\d+)?Z$/, ':00Z'), zone).slice(11)) : words.transfer.kept[kept.state]
  return <span role="status" className={kept.state === 'failed' || kept.state === 'here' ? 'kept-failed' : 'quiet'}>{text}</span>
}
