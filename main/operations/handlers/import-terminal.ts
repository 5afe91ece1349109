import { orRefuse, Refused, type Finding } from '../../../core/refusal/index.ts'
import { readMonthFolder, type MonthFolder, type MonthMovement } from '../../exchange/month-folder.ts'
import { readTerminalFolder, type TerminalFolder } from '../../exchange/terminal-folder.ts'
import type { Call, Handler, LedgerContext, ParsedInput } from '../context.ts'
import { createIdentity } from './identities.ts'
import { recordInventory } from './inventory.ts'
import { setPerson } from './people.ts'
import { postTicket } from './post-ticket.ts'
import { setLimit, setParty, setProduct, setTank, setTerminal } from './set-up.ts'
import { voidTicket } from './tickets.ts'

/** One posting, when it was made at the terminal, and what it says of itself. */
interface Act { readonly at: string; readonly what: string; readonly place: string; do(context: LedgerContext, call: Call): Promise<unknown> }

const MINUTE = 60_000
/** How long after the gauge it was entered, and after the closing gauge the ticket was issued [min]. */
const ENTERED_AFTER = 15
const ISSUED_AFTER = 20

/**
 * Reads a terminal, and its month if asked, and posts everything in the order of time by the very handlers that a person
 * would call, each at the instant at which it was done at the terminal. All that is wrong with the files is refused
 * before the first posting; a cancelled import leaves whole entries only.
 */
export const importTerminal: Handler<'import-terminal'> = async (input, context, call) => {
  await refuseUsedLedger(context)
  const terminal = orRefuse(readTerminalFolder(input.files))
  const month = input.withMonth ? orRefuse(readMonthFolder(input.files, terminal)) : { inventories: [], movements: [] }
  const before = [...setUpActs(terminal, input), ...monthActs(month, input)]
  const acts = [...before, ...peopleActs(terminal, input, before.at(-1)?.at ?? terminal.effectiveFrom)]
  refuseFuture(acts, context.now())
  for (const [done, act] of acts.entries()) {
    call.signal.throwIfAborted()
    call.progress({ done, of: acts.length, what: act.what })
    await act.do({ ...context, now: () => act.at }, { progress: () => undefined, signal: call.signal })
  }
  call.progress({ done: acts.length, of: acts.length, what: 'entered' })
  const head = await context.store.head()
  return { entries: head.seq, tickets: await context.store.ticketCount(), head: head.hash }
}

/** What is imported happened before; behind other entries it would stand out of its time. */
async function refuseUsedLedger({ store }: LedgerContext): Promise<void> {
  const { seq } = await store.head()
  if (seq > 0) throw new Refused([{ code: 'already-on-record', path: 'ledger', value: `${String(seq)} entries`, limit: 'a folder is imported into an empty ledger', clause: 'HOUSE samples' }])
}

function refuseFuture(acts: readonly Act[], now: string): void {
  const findings = acts.filter(({ at }) => Date.parse(at) > Date.parse(now)).map(({ at, place }): Finding => ({ code: 'time-in-future', path: place, value: at, limit: now, clause: 'HOUSE times' }))
  if (findings.length > 0) throw new Refused(findings)
}

type Input = ParsedInput<'import-terminal'>

/** Set-up in the order in which one thing names another. */
function setUpActs(folder: TerminalFolder, { by, passphrase }: Input): readonly Act[] {
  const { effectiveFrom } = folder
  const act = (what: string, place: string, doIt: Act['do']): Act => ({ at: effectiveFrom, what, place, do: doIt })
  return [
    act(folder.terminal.name, 'terminal/terminal.json, effectiveFrom', (context, call) => setTerminal({ terminal: folder.terminal, by }, context, call)),
    ...folder.parties.map((party) => act(party.name, 'terminal/parties.csv', (context, call) => setParty({ party, by }, context, call))),
    ...folder.products.map((product) => act(product.name, 'terminal/products.csv', (context, call) => setProduct({ product, effectiveFrom, by }, context, call))),
    ...folder.tanks.map((tank) => act(tank.name, 'terminal/tanks.csv', (context, call) => setTank({ tank, effectiveFrom, by }, context, call))),
    ...folder.limits.map((limit) => act(`limit of ${limit.product}`, 'terminal/limits.csv', (context, call) => setLimit({ limit, effectiveFrom, by }, context, call))),
    ...folder.people.map(({ id, name, party }) => act(`key of ${name}`, 'terminal/people.csv', (context, call) => createIdentity({ id, name, party, passphrase, by }, context, call))),
  ]
}

/** Whoever has a role, once everything else is entered; the administrator first, since without one nobody else could follow. */
function peopleActs({ people }: TerminalFolder, { by, passphrase, withPeople }: Input, at: string): readonly Act[] {
  if (withPeople !== true) return []
  const working = people.flatMap(({ id, name, party, roles }) => (roles === undefined ? [] : [{ id, name, party, roles, active: true, identity: id }]))
  const administersFirst = working.toSorted((a, b) => Number(b.roles.includes('administrator')) - Number(a.roles.includes('administrator')))
  return administersFirst.map((person) => ({
    at, what: `roles of ${person.name}`, place: 'terminal/people.csv', do: (context, call) => setPerson({ person, effectiveFrom: at, passphrase, by }, context, call),
  }))
}

/** Inventories, tickets, voids and replacements in the order in which they were made. */
function monthActs({ inventories, movements }: MonthFolder, { passphrase }: Input): readonly Act[] {
  const numbers = new Map<string, string>()
  const voidedAt = new Map(movements.flatMap(({ ticket, voided }) => (voided === undefined ? [] : [[ticket.reference, voided.at] as const])))
  const acts = [
    ...inventories.map(({ line, snapshot }): Act => ({
      at: later(snapshot.at, ENTERED_AFTER), what: `inventory of ${snapshot.tank}`, place: line, do: (context, call) => recordInventory({ snapshot, by: snapshot.by }, context, call),
    })),
    ...movements.flatMap((movement): readonly Act[] => [ticketAct(movement, voidedAt, numbers, passphrase), ...voidActs(movement, numbers)]),
  ]
  return acts.toSorted((a, b) => Date.parse(a.at) - Date.parse(b.at))
}

function ticketAct({ line, ticket, signers, replaces }: MonthMovement, voidedAt: ReadonlyMap<string, string>, numbers: Map<string, string>, passphrase: string): Act {
  const issued = replaces === undefined ? ticket.closing.at : voidedAt.get(replaces) ?? ticket.closing.at
  return {
    at: later(issued, ISSUED_AFTER), what: `${ticket.kind} ${ticket.reference}, ${ticket.tank}`, place: line,
    do: async (context, call) => {
      const replaced = replaces === undefined ? undefined : numbers.get(replaces)
      const { number } = await postTicket({
        ticket: { ...ticket, ...(replaced === undefined ? {} : { replaces: replaced }) },
        signers: [{ identity: signers.first, role: 'terminal', passphrase }, { identity: signers.second, role: signers.role, passphrase }],
      }, context, call)
      numbers.set(ticket.reference, number)
    },
  }
}

function voidActs({ line, ticket, voided }: MonthMovement, numbers: ReadonlyMap<string, string>): readonly Act[] {
  if (voided === undefined) return []
  return [{
    at: voided.at, what: `void ${ticket.reference}`, place: line,
    do: (context, call) => voidTicket({ number: numbers.get(ticket.reference) ?? '', reason: voided.reason, by: voided.by }, context, call),
  }]
}

function later(at: string, minutes: number): string {
  return `${new Date(Date.parse(at) + minutes * MINUTE).toISOString().slice(0, 19)}Z`
}
