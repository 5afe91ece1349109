import type { ReactNode } from 'react'
import { addressOf, goTo } from '../app/route.ts'
import { useQuery } from '../bridge/use-operation.ts'
import { Button } from '../parts/Button.tsx'
import { CallFailed } from '../parts/Findings.tsx'
import { Page } from '../parts/Page.tsx'
import { Waiting } from '../parts/Waiting.tsx'
import { words } from '../words/en.ts'
import { transferFormSchema } from './transfer-form.ts'
import { TransferSheet } from './TransferSheet.tsx'

/** Opens a kept draft on the sheet. */
export function OpenDraft({ id }: { readonly id: string }): ReactNode {
  const [state, again] = useQuery('list-drafts', {})
  const t = words.transfer
  if (state.state === 'failed') return <Page title={t.title}><CallFailed error={state.error} onAgain={again} /></Page>
  if (state.state !== 'done') return <Page title={t.title}><Waiting /></Page>
  const draft = state.value.drafts.find((kept) => kept.id === id)
  const form = transferFormSchema.safeParse(draft?.body)
  if (form.success) return <TransferSheet id={id} start={form.data} />
  return (
    <Page title={t.title}>
      <p>{draft ? t.draftUnreadable : t.draftGone}</p>
      <Button onClick={() => goTo(addressOf('transfer', ['start']))}>{t.backToStart}</Button>
    </Page>
  )
}
