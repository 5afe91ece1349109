import type { ReactNode } from 'react'
import { addressOf, goTo, type Route } from '../app/route.ts'
import { useQuery } from '../bridge/use-operation.ts'
import { Button } from '../parts/Button.tsx'
import { CallFailed } from '../parts/Findings.tsx'
import { Page } from '../parts/Page.tsx'
import { Waiting } from '../parts/Waiting.tsx'
import { words } from '../words/en.ts'
import { OwnersPage } from './OwnersPage.tsx'
import { stockFormSchema } from './stock-form.ts'
import { StockDetail } from './StockDetail.tsx'
import { StockList } from './StockList.tsx'
import { StockSheet } from './StockSheet.tsx'

/** `#/stock` · `#/stock/<draft>` · `#/stock/moved/<entry>` · `#/stock/owners` · `#/stock?tank=T-101` */
export function StockJob({ route }: { readonly route: Route }): ReactNode {
  const [first, second] = route.rest
  if (first === undefined) return <StockList tank={route.query['tank'] ?? ''} />
  if (first === 'owners') return <OwnersPage />
  if (first === 'moved' && second !== undefined) return <StockDetail key={second} seq={Number(second)} />
  return <OpenStock key={first} id={first} />
}

/** What was prepared is not changed under the hands of whoever approves it. */
function WaitingDraft({ title }: { readonly title: string }): ReactNode {
  const t = words.stock
  return (
    <Page title={title}>
      <p>{t.waits}</p>
      <div className="stock-ways"><Button onClick={() => goTo(addressOf('people'))}>{t.toWaiting}</Button><Button onClick={() => goTo(addressOf('stock'))}>{t.back}</Button></div>
    </Page>
  )
}

function OpenStock({ id }: { readonly id: string }): ReactNode {
  const [state, again] = useQuery('list-drafts', {})
  const { title } = words.stock
  if (state.state === 'failed') return <Page title={title}><CallFailed error={state.error} onAgain={again} /></Page>
  if (state.state !== 'done') return <Page title={title}><Waiting /></Page>
  const draft = state.value.drafts.find((kept) => kept.id === id)
  const form = stockFormSchema.safeParse(draft?.body)
  if (draft?.waits !== undefined) return <WaitingDraft title={draft.title} />
  if (form.success) return <StockSheet id={id} start={form.data} />
  return (
    <Page title={title}>
      <p>{draft ? words.transfer.draftUnreadable : words.transfer.draftGone}</p>
      <Button onClick={() => goTo(addressOf('stock'))}>{words.stock.back}</Button>
    </Page>
  )
}
