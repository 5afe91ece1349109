import { createReadStream } from 'node:fs'
import { Refused } from '../../core/refusal/index.ts'

/** No entry and no document comes near this length [bytes]. */
const LONGEST = 64 << 20
const NEW_LINE = 0x0a
const UTF8 = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true })

/** A line of a file, counted from 1. */
export interface Line { readonly number: number; readonly text: string }

/** That a line of an exported ledger cannot be taken, and what to do. */
export function lineRefusal(line: number, value: string, limit = 'nothing was imported; export the ledger again, or take another copy of the file'): Refused {
  return new Refused([{ code: 'ledger-line', path: `line ${line}`, value, limit, clause: 'HOUSE ledger lines' }])
}

/** The lines of a file, one after another, however large it is. The last one must be ended too. */
export async function* linesOfFile(path: string): AsyncIterable<Line> {
  let [rest, restBytes, number]: [Buffer[], number, number] = [[], 0, 1]
  for await (const part of createReadStream(path, { highWaterMark: 1 << 20 })) {
    const bytes: Buffer = part
    let from = 0
    for (let at = bytes.indexOf(NEW_LINE); at >= 0; at = bytes.indexOf(NEW_LINE, from)) {
      yield { number, text: textOf(Buffer.concat([...rest, bytes.subarray(from, at)]), number) }
      ;[rest, restBytes, number, from] = [[], 0, number + 1, at + 1]
    }
    if (from === bytes.length) continue
    rest.push(bytes.subarray(from))
    restBytes += bytes.length - from
    if (restBytes > LONGEST) throw lineRefusal(number, 'it is longer than any line of a ledger')
  }
  if (restBytes > 0) throw lineRefusal(number, 'it is cut short: no line end follows it')
}

function textOf(bytes: Buffer, number: number): string {
  try {
    return UTF8.decode(bytes)
  } catch {
    throw lineRefusal(number, 'it is no text in UTF-8')
  }
}
