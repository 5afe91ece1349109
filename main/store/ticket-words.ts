import type { Kysely } from 'kysely'
import type { Ticket } from '../../core/ticket/index.ts'
import type { Schema } from './schema.ts'

/** So many words of one ticket are looked for. */
export const WORDS = 1000
/** A word that no more tickets than these have is found by itself; a commoner one is met soon enough among the newest. */
const RARE = 500
/** After every text that begins with a word, in the order of code points. */
const END = '\u{10FFFF}'

/** What a search in the register looks through, lower case. */
export function wordsOf(ticket: Ticket): string {
  const { from, to, signers } = ticket
  const words = [
    ticket.number, ticket.kind, ticket.tank.code, ticket.product.code, ticket.productName, from.code, from.name, to.code, to.name,
    ticket.reference, ticket.remarks, ticket.replaces, ...signers.map((signer) => signer.name),
  ]
  return words.filter((word) => word !== undefined).join('\n').toLowerCase()
}

/** Every word of a ticket by whose beginning it is found: as it stands, its parts between signs, and its number from any digit on. */
export function searchedWords(ticket: Ticket): readonly string[] {
  const whole = wordsOf(ticket).split(/\s+/)
  const parts = whole.flatMap((word) => word.split(/[^\p{L}\p{N}]+/u))
  const digits = /\d*$/.exec(ticket.number)?.[0] ?? ''
  const ends = Array.from(digits, (_, i) => digits.slice(i))
  return [...new Set([...whole, ...parts, ...ends])].filter((word) => word !== '').slice(0, WORDS)
}

/**
 * The tickets among which those with all of the words are: those of the rarest, newest first; undefined when every word
 * is common. What it costs follows the tickets that it finds, not those that there are.
 */
export async function ticketsWithRarest(db: Kysely<Schema>, words: readonly string[]): Promise<readonly number[] | undefined> {
  let rarest: readonly number[] | undefined
  for (const word of words) {
    const rows = await db.selectFrom('ticket_word').select('seq').distinct().where('word', '>=', word).where('word', '<', word + END).limit(RARE + 1).execute()
    if (rows.length <= RARE && rows.length < (rarest?.length ?? Infinity)) rarest = rows.map(({ seq }) => seq)
  }
  return rarest
}
