import { callOperation } from '../../../main/operations/call-operation.ts'
import type { Context } from '../../../main/operations/context.ts'
import { openContext } from '../../../main/shells/open-context.ts'
import { FIRST_YEAR, YEARS } from './long-ledger.ts'

const ROUNDS = 7

/** How long something takes [ms]: right after the ledger was opened, and the median after that. */
export interface View { readonly what: string; readonly first: number; readonly median: number }

type Ask = (context: Context) => Promise<unknown>

async function ask(context: Context, name: string, input: unknown): Promise<unknown> {
  const answer = await callOperation(name, input, context, { progress: () => undefined, signal: new AbortController().signal })
  if (!('result' in answer)) throw new Error(`${name}: ${JSON.stringify(answer)}`)
  return answer.result
}

function viewsOf(tickets: number): readonly (readonly [what: string, ask: Ask])[] {
  const month = (year: number, of: number): string => new Date(Date.UTC(year, of, 1)).toISOString().replace('.000', '')
  const number = `CPT-${String(Math.ceil(tickets / 2)).padStart(6, '0')}`
  const last = FIRST_YEAR + YEARS - 1
  return [
    ['first view: terminal, drafts, register, head', async (context) => {
      await Promise.all([ask(context, 'terminal', {}), ask(context, 'list-drafts', {}), ask(context, 'list-tickets', {}), context.store?.head()])
    }],
    ['a ticket by its number', (context) => ask(context, 'read-ticket', { number })],
    ['a ticket by words: its number', (context) => ask(context, 'list-tickets', { search: number })],
    ['a ticket by words: two rare ones', (context) => ask(context, 'list-tickets', { search: `voyage 13 ${number.slice(4)}` })],
    ['a ticket by words: common ones', (context) => ask(context, 'list-tickets', { search: 'party 3 receipt crude' })],
    ['a word that no ticket has', (context) => ask(context, 'list-tickets', { search: 'nowhere' })],
    ['the last whole month reconciled', (context) => ask(context, 'reconcile', { from: month(last, 10), to: month(last, 11) })],
    ['a month of the first year reconciled', (context) => ask(context, 'reconcile', { from: month(FIRST_YEAR, 2), to: month(FIRST_YEAR, 3) })],
    ['balances at the end of the last whole month', (context) => ask(context, 'balances', { at: month(last, 11) })],
    ['balances in the midst of the first year', (context) => ask(context, 'balances', { at: `${FIRST_YEAR}-05-20T06:00:00Z` })],
  ]
}

/** Every view of a ledger, timed on a ledger that was just opened and then again. */
export async function views(path: string, tickets: number): Promise<readonly View[]> {
  const found: View[] = []
  for (const [what, view] of viewsOf(tickets)) {
    const context = { ...await openContext(path, (line) => { console.error(line) }), now: () => `${FIRST_YEAR + YEARS}-01-01T00:00:00Z` }
    const times: number[] = []
    for (let round = 0; round < ROUNDS; round += 1) {
      const begin = performance.now()
      await view(context)
      times.push(performance.now() - begin)
    }
    await context.store?.close()
    found.push({ what, first: times[0] ?? NaN, median: times.slice(1).toSorted((one, other) => one - other)[Math.floor((ROUNDS - 1) / 2)] ?? NaN })
  }
  return found
}
