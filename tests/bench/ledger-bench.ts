import { join } from 'node:path'
import { chainRate } from './ledger/chain-rate.ts'
import { longLedger } from './ledger/long-ledger.ts'
import { postingRaces, type Times } from './ledger/posting-race.ts'
import { views, type View } from './ledger/views.ts'

/** Most of the time of bare inserts that a posting may take. */
const POSTING = 1.3
/** Entries whose links are to be followed in a second of one core. */
const CHAIN = 100_000
/** Longest that a view of the largest ledger may take [ms]. */
const VIEW = 200
const SIZES = [10_000, 100_000, 1_000_000] as const

const [, , folder = '.'] = process.argv
const grouped = new Intl.NumberFormat('en')
const column = (text: string, width: number): string => text.padStart(width)
let missed = false

const bookedRatio = ({ booked, inserted }: Times): number => booked / inserted
const wholeRatio = ({ prepared, booked, inserted }: Times): number => (prepared + booked) / inserted

function verdict(what: string, met: boolean): void {
  if (!met) missed = true
  console.log(`${what}: ${met ? 'met' : 'MISSED'}\n`)
}

console.log('Posting: one entry in a transaction, on disk when it is booked, beside bare inserts of the same rows into the same tables of a copy, one by one in turn, each after the bytes were made [µs]')
console.log(`${'what is posted: mean (median)'.padEnd(46)}${['prepared', 'booked', 'inserts', 'booked/inserts', 'with prepared'].map((text) => column(text, 15)).join('')}`)
const races = await postingRaces(join(folder, 'posting'))
for (const { what, mean, median } of races) {
  const times = (['prepared', 'booked', 'inserted'] as const).map((part) => `${mean[part].toFixed(0)} (${median[part].toFixed(0)})`)
  const ratios = [bookedRatio, wholeRatio].map((ratio) => `${ratio(mean).toFixed(2)} (${ratio(median).toFixed(2)})`)
  console.log(`${what.padEnd(46)}${[...times, ...ratios].map((text) => column(text, 15)).join('')}`)
}
verdict(`Booking at most ${POSTING} times bare inserts of the same bytes`, races.every(({ mean }) => bookedRatio(mean) <= POSTING))

const paths: string[] = []
for (const size of SIZES) {
  const begin = performance.now()
  paths.push(await longLedger(folder, size))
  const seconds = (performance.now() - begin) / 1000
  if (seconds > 1) console.log(`made a ledger of ${grouped.format(size)} entries in ${seconds.toFixed(0)} s`)
}

const { entries, bytes, perSecond, share } = await chainRate(paths[1] ?? '')
console.log(`Chain: ${grouped.format(entries)} entries of ${bytes.toFixed(0)} bytes each: ${grouped.format(Math.floor(perSecond))} a second on one core; plain SHA-256 over the same bytes would take ${(100 * share).toFixed(1)} % of that time`)
verdict(`At least ${grouped.format(CHAIN)} a second`, perSecond >= CHAIN)

console.log(`Views of ledgers of ten years, a twentieth of the entries tickets [ms]: just opened / median after that`)
console.log(`${''.padEnd(48)}${SIZES.map((size) => column(grouped.format(size), 18)).join('')}`)
const found: (readonly View[])[] = []
for (const [i, path] of paths.entries()) found.push(await views(path, Math.floor((SIZES[i] ?? 0) / 20)))
for (const [i, { what }] of (found[0] ?? []).entries()) {
  console.log(`${what.padEnd(48)}${found.map((of) => column(`${of[i]?.first.toFixed(1)} / ${of[i]?.median.toFixed(1)}`, 18)).join('')}`)
}
verdict(`At most ${VIEW} ms of the largest ledger`, (found.at(-1) ?? []).every(({ first, median }) => first <= VIEW && median <= VIEW))
process.exitCode = missed ? 1 : 0
