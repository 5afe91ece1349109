import { deflateSync, inflateSync } from 'node:zlib'
import { beforeAll, describe, expect, it } from 'vitest'
import { ticketDocument } from '../../../main/documents/ticket.ts'
import { isDrawnAs } from '../../../main/documents/ticket-pages.ts'
import { openPdf } from '../../../main/signing/index.ts'
import { run, scratch } from '../../support/outside-programs.ts'
import { aBasis, aPair, aTicket, signersOf } from '../../support/ticket.ts'

let drawn: Uint8Array
beforeAll(async () => { drawn = await ticketDocument(aTicket(signersOf(await aPair())), aBasis()) })

/** The same document with every stream packed again, as another build of the compressor might, and its contents altered on the way. */
function repacked(pdf: Uint8Array, alter: (contents: string) => string = (contents) => contents): Uint8Array {
  const offsets = new Map<number, number>()
  let out = '%PDF-1.7\n%\u00ff\u00ff\u00ff\u00ff\n'
  for (const [, number = '', body = ''] of Buffer.from(pdf).toString('latin1').matchAll(/(?<=\n)(\d+) 0 obj\n([\s\S]*?)\nendobj\n/g)) {
    offsets.set(Number(number), out.length)
    const parts = /^([\s\S]*\/Length )\d+(\n\/Filter \/FlateDecode\n>>\nstream\n)([\s\S]*)\nendstream$/.exec(body)
    const packed = parts && deflateSync(Buffer.from(alter(inflateSync(Buffer.from(parts[3] ?? '', 'latin1')).toString('latin1')), 'latin1'), { level: 1 }).toString('latin1')
    out += `${number} 0 obj\n${parts && packed !== null ? `${parts[1]}${packed.length}${parts[2]}${packed}\nendstream` : body}\nendobj\n`
  }
  const trailer = /trailer\n[\s\S]*?\nstartxref\n/.exec(Buffer.from(pdf).toString('latin1'))?.[0]
  const table = Array.from({ length: offsets.size }, (_, at) => `${String(offsets.get(at + 1)).padStart(10, '0')} 00000 n \n`)
  return new Uint8Array(Buffer.from(`${out}xref\n0 ${offsets.size + 1}\n0000000000 65535 f \n${table.join('')}${trailer}${out.length}\n%%EOF\n`, 'latin1'))
}

describe('a document compared with how it is drawn', () => {
  it('is the same when only its packing differs', () => {
    const other = repacked(drawn)
    expect(other.length).not.toBe(drawn.length)
    const files = scratch()
    expect(run('qpdf', '--check', files.put('repacked.pdf', other)).code).toBe(0)
    files.done()
    expect(isDrawnAs(openPdf(other), drawn)).toBe(true)
  })

  it('differs when one glyph on one page does', () => {
    // Glyphs stand in hex in the page's drawing, as [<0001> …] TJ.
    let altered = 0
    const other = repacked(drawn, (contents) => (altered === 0 && contents.includes('] TJ') ? contents.replace(/\[<([0-9a-f])/, (_, digit: string) => { altered += 1; return `[<${digit === '0' ? '1' : '0'}` }) : contents))
    expect(altered).toBe(1)
    expect(isDrawnAs(openPdf(other), drawn)).toBe(false)
  })

  it('differs from another ticket', async () => {
    const other = await ticketDocument(aTicket(signersOf(await aPair())), aBasis())
    expect(isDrawnAs(openPdf(other), drawn)).toBe(false)
  })
})
