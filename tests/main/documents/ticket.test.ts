import { readFileSync } from 'node:fs'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { canonicalJson } from '../../../core/ledger/index.ts'
import type { Ticket } from '../../../core/ticket/index.ts'
import { ticketDocument } from '../../../main/documents/ticket.ts'
import { run, scratch } from '../../support/outside-programs.ts'
import { aClosingGauge, anOpeningGauge } from '../../support/snapshots.ts'
import { aBasis, aPair, aTicket, signersOf } from '../../support/ticket.ts'

const files = scratch()
afterAll(files.done)
let ticket: Ticket
let pdf: Uint8Array
let path: string
beforeAll(async () => {
  ticket = aTicket(signersOf(await aPair()), aBasis(), {
    opening: anOpeningGauge({ level: { ullage: '9.250 m', observedReferenceHeight: '13.251 m' } }),
    closing: aClosingGauge({ remarks: 'roof drain shut' }),
    lineFill: { opening: { volume: '12.500 m3', temperature: '18.0 degC' }, closing: { volume: '12.400 m3', temperature: '19.5 degC' } },
    reference: 'Nomination 17', remarks: 'Written as 漢 and seen as a code', replaces: 'CPT-000000',
  })
  pdf = await ticketDocument(ticket, aBasis())
  path = files.put('ticket.pdf', pdf)
})

/** The text of all pages, blanks made single, as pdftotext reads it. */
function printed(): string {
  return run('pdftotext', '-layout', path, '-').out.replace(/\s+/g, ' ')
}

describe('a ticket as a document', () => {
  it('is the same to the last byte whenever it is made', async () => {
    expect(Buffer.from(await ticketDocument(ticket, aBasis())).equals(pdf)).toBe(true)
  })

  it('is a whole PDF 1.7 in which qpdf finds nothing wrong', () => {
    const said = run('qpdf', '--check', path)
    expect([said.code, said.out.includes('PDF Version: 1.7'), said.out.includes('WARNING')]).toEqual([0, true, false])
  })

  it('has its fonts inside and its dates from the ticket', () => {
    const fonts = run('pdffonts', path).out.trim().split('\n').slice(2)
    expect(fonts.length).toBeGreaterThan(1)
    for (const font of fonts) expect(font).toMatch(/yes +yes +yes/)
    const info = run('pdfinfo', '-isodates', path).out
    expect(info).toContain('CreationDate:    2026-03-14T19:05:00')
    expect(info).toMatch(/Title: +Ticket CPT-000001, Calder Point Terminal/)
    expect(info).toContain('595.28 x 841.89 pts (A4)')
  })

  it('carries the ticket and what it was computed with, as canonical JSON', () => {
    expect(run('pdfdetach', '-list', path).out).toContain('2 embedded files')
    run('pdfdetach', '-savefile', 'ticket.json', '-o', files.path('ticket.json'), path)
    run('pdfdetach', '-savefile', 'basis.json', '-o', files.path('basis.json'), path)
    expect(readFileSync(files.path('ticket.json'), 'utf8')).toBe(canonicalJson(ticket))
    expect(readFileSync(files.path('basis.json'), 'utf8')).toBe(canonicalJson(aBasis()))
  })
})

describe('its pages', () => {
  it('print the moved quantities to the last digit', () => {
    const text = printed()
    for (const { value } of Object.values(ticket.result.moved)) expect(text).toContain(` ${value.replace('-', '−')} `)
  })

  it('print every line of both worksheets: symbol, name, values, values before rounding, rule, clause', () => {
    const text = printed()
    const { opening, closing, lines } = ticket.result
    for (const line of [...opening.lines, ...closing.lines, ...lines]) {
      for (const part of [line.symbol, line.value.replace(/^-/, '−'), line.clause.split(' ')[0] ?? '']) expect(text).toContain(part)
      expect(text.replace(/ /g, '')).toContain(line.unrounded.replace(/^-/, '−'))
    }
    expect(text).toContain('0.00001, half away from zero')
  })

  it('print both gauges as they were written', () => {
    const text = printed()
    for (const written of ['9.250 m ullage', '9.500 m innage', '13.251 m', 'not measured', '50 mm', '60 mm', '22.5 degC', '845.3 kg/m3, at base conditions', '0.20 %', 'roof drain shut', '12.400 m3']) expect(text).toContain(written)
  })

  it('print who, where, by what software, and where in the ledger', () => {
    const text = printed().replace(/ /g, '')
    const hashes = [...ticket.signers.map((signer) => signer.certificate), ticket.tank.hash, ticket.product.hash, ticket.software.core, ticket.ledger.head]
    for (const hash of hashes) expect(text).toContain(hash)
    for (const words of ['Calder Point Terminal', 'Northbank Supply', 'João Reis', 'Ana Duarte', 'This ticket replaces CPT-000000', 'API MPMS 11.1-2004, ', 'CAL-2024-0117', 'npx dipledger verify-document']) expect(printed()).toContain(words)
  })

  it('each bear the number of the ticket and their place', () => {
    const pages = run('pdftotext', '-layout', path, '-').out.split('\f').slice(0, -1)
    expect(pages.length).toBeGreaterThan(1)
    pages.forEach((page, at) => {
      expect(page).toContain('CPT-000001')
      expect(page).toContain(`page ${at + 1} of ${pages.length}`)
    })
  })

  it('lose no character: what the font cannot draw is written as its code', () => {
    expect(printed()).toContain('Written as [U+6F22] and seen as a code')
    expect(printed().match(/\[U\+/g)).toHaveLength(1)
  })

  it('give exceptions a box of their own, and say so when there are none', async () => {
    expect(printed()).toContain(ticket.result.exceptions[0]?.message ?? 'No exceptions were recorded')
    const clean = await ticketDocument(aTicket(ticket.signers), aBasis())
    expect(run('pdftotext', files.put('clean.pdf', clean), '-').out).toContain('No exceptions were recorded with these gauges.')
  })
})
