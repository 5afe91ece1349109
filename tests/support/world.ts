import { copyFileSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Answer } from '../../main/operations/answer.ts'
import { callOperation } from '../../main/operations/call-operation.ts'
import type { Context } from '../../main/operations/context.ts'
import { makeDesk } from '../../main/operations/desk/desk.ts'
import type { InputOf, OperationName, OutputOf, Progress } from '../../main/operations/contracts/index.ts'
import { openContext } from '../../main/shells/open-context.ts'
import { openStore } from '../../main/store/index.ts'
import type { Flavour } from './places.ts'
import { aDatabase } from './postgres.ts'
import { aProduct } from './snapshots.ts'
import { aTank } from './tanks.ts'

/** Passphrase of everybody in these tests. */
export const PASSPHRASE = 'a lamp at the end of the pier'

/** The instant now, in these tests: the day after the gauges of the support builders. */
export const NOW = '2026-03-15T08:00:00Z'

/** How the desk of these tests calls itself. */
export const STATION = 'quay-desk'

/** A ledger in a folder of its own, and how to call operations on it. */
export interface World {
  readonly folder: string
  readonly ledger: string
  readonly context: Context
  /** What was written to the log. */
  readonly log: string[]
  readonly steps: Progress[]
  /** The answer whole. */
  call(name: string, input: unknown): Promise<Answer>
  /** The result; throws when it was refused or broke. */
  ask<N extends OperationName>(name: N, input: InputOf<N>): Promise<OutputOf<N>>
  close(): Promise<void>
}

interface WorldOptions {
  /** Without a ledger only pure operations work. */
  readonly withLedger?: boolean
  readonly now?: () => string
  /** A closed ledger to begin with a copy of. */
  readonly copyOf?: string
  /** Where the ledger is kept; DIPLEDGER_TEST_FLAVOUR=postgres runs every world on PostgreSQL. */
  readonly on?: Flavour
}

const USUAL: Flavour = process.env['DIPLEDGER_TEST_FLAVOUR'] === 'postgres' ? 'postgres' : 'sqlite'

/** A new world. */
export async function aWorld({ withLedger = true, now = () => NOW, copyOf, on = USUAL }: WorldOptions = {}): Promise<World> {
  const folder = mkdtempSync(join(tmpdir(), 'dipledger-world-'))
  const ledger = join(folder, 'ledger.db')
  if (copyOf !== undefined) copyFileSync(copyOf, ledger)
  const place = !withLedger ? null : on === 'sqlite' ? ledger : await onServer(copyOf === undefined ? undefined : ledger)
  const log: string[] = []
  const steps: Progress[] = []
  const context: Context = { ...await openContext(place, (line) => { log.push(line) }, { folder, chosenBy: 'start' }), desk: makeDesk(STATION, 2 ** 10), now }
  const call = (name: string, input: unknown): Promise<Answer> => callOperation(name, input, context, { progress: (step) => { steps.push(step) }, signal: new AbortController().signal })
  return {
    folder, ledger, context, log, steps, call,
    async ask<N extends OperationName>(name: N, input: InputOf<N>): Promise<OutputOf<N>> {
      const answer = await callOperation(name, input, context, { progress: (step) => { steps.push(step) }, signal: new AbortController().signal })
      if ('result' in answer) return answer.result
      throw new Error('refused' in answer ? answer.refused.findings.map((finding) => finding.message).join('\n') : answer.fault.message)
    },
    async close() {
      await context.store?.close()
      rmSync(folder, { recursive: true, force: true })
    },
  }
}

/** A database of its own, with what is in a file if one is given. */
async function onServer(file: string | undefined): Promise<string> {
  const address = await aDatabase()
  if (file === undefined) return address
  const store = await openStore(file)
  await store.copyToServer(address, () => undefined, new AbortController().signal)
  await store.close()
  return address
}

/** A closed ledger with the terminal of {@link setUpTerminal}, to copy; making keys is slow. */
export async function aTerminalLedger(): Promise<{ readonly path: string; readonly remove: () => Promise<void> }> {
  const world = await aWorld({ on: 'sqlite' })
  await setUpTerminal(world)
  await world.context.store?.close()
  return { path: world.ledger, remove: async () => { rmSync(world.folder, { recursive: true, force: true }) } }
}

/** A terminal with one tank, one product, two parties and a person of each. */
export async function setUpTerminal({ ask }: Pick<World, 'ask'>): Promise<void> {
  const by = 'M. Duarte'
  const effectiveFrom = '2026-01-01T00:00:00Z'
  await ask('set-terminal', { terminal: { code: 'CPT', name: 'Calder Point Terminal', zone: 'Europe/Lisbon', gaugeHour: '06:00' }, by })
  await ask('set-product', { product: aProduct(), effectiveFrom, by })
  await ask('set-tank', { tank: aTank(), effectiveFrom, by })
  await ask('set-party', { party: { code: 'CPT', name: 'Calder Point Terminal' }, by })
  await ask('set-party', { party: { code: 'NORTHSHORE', name: 'North Shore Supply' }, by })
  await ask('set-limit', { limit: { product: 'CRUDE', percent: '0.25 %', fixed: '0 m3', base: 'receipts-and-deliveries', source: 'Terminal agreement' }, effectiveFrom, by })
  await ask('create-identity', { id: 'm-duarte', name: 'M. Duarte', party: 'CPT', passphrase: PASSPHRASE, by })
  await ask('create-identity', { id: 'j-vance', name: 'J. Vance', party: 'NORTHSHORE', passphrase: PASSPHRASE, by })
}
