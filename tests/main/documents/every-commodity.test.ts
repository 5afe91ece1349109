import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { checkProduct, type Product } from '../../../core/quantity/index.ts'
import { COMMODITIES, FAMILIES, type Commodity, type Edition } from '../../../core/volume-correction/index.ts'
import type { Ticket } from '../../../core/ticket/index.ts'
import type { GaugeSnapshot } from '../../../core/gauge/index.ts'
import { ticketDocument } from '../../../main/documents/ticket.ts'
import { LIQUIDS } from '../../support/commodities.ts'
import { must } from '../../support/must.ts'
import { run, scratch } from '../../support/outside-programs.ts'
import { aClosingGauge, anOpeningGauge, aProduct } from '../../support/snapshots.ts'
import { aBasis, aPair, aTicket, signersOf } from '../../support/ticket.ts'

const files = scratch()
afterAll(files.done)
let signers: Ticket['signers']
beforeAll(async () => { signers = signersOf(await aPair()) })

/** Text of the pages of a receipt of a product, and the standard that its worksheets name. */
async function printed(product: Product, parts: Partial<GaugeSnapshot>): Promise<{ readonly text: string; readonly standard: string }> {
  const basis = aBasis({ product: must(checkProduct(product, 'product')) })
  const ticket = aTicket(signers, basis, { opening: anOpeningGauge(parts), closing: aClosingGauge(parts) })
  const { out } = run('pdftotext', files.put(`${product.commodity}.pdf`, await ticketDocument(ticket, basis)), '-')
  return { text: out.replace(/\s+/g, ' '), standard: ticket.result.opening.standard }
}

function productOf(commodity: Commodity, parts: Partial<Product> = {}): Product {
  const { density: _, temperature: __, ...settings } = LIQUIDS[commodity]
  const [edition] = FAMILIES[commodity].editions
  return aProduct({ commodity, edition: edition as Edition, ...settings, ...parts })
}

const gauge = (commodity: Commodity): Partial<GaugeSnapshot> => ({ density: { value: LIQUIDS[commodity].density, instrument: 'base' }, temperatures: { liquid: LIQUIDS[commodity].temperature, ambient: '12.0 degC' } })

describe('the ticket', () => {
  it.each(COMMODITIES)('of %s prints its standard, and loses no character', async (commodity) => {
    const { text, standard } = await printed(productOf(commodity), gauge(commodity))
    expect(text).toContain(standard)
    expect(text).not.toContain('[U+')
  })

  it.each([
    ['the tables of 1980', { edition: 'ASTM-D1250-80' }, 'ASTM D1250-80, Table 54A (crude)'],
    ['the addendum of 2019', { edition: 'MPMS-11.1-2019' }, 'API MPMS 11.1-2004 with Addendum 2 (2019), crude oils'],
  ] as const)('by %s says so', async (_, parts, standard) => {
    expect((await printed(aProduct(parts), {})).text).toContain(standard)
  })

  it('of a light hydrocarbon prints its vapour as written, and as liquid', async () => {
    const { text } = await printed(productOf('lpg', { molarMass: '44.097 g/mol' }), { ...gauge('lpg'), waterCut: '0 mm', pressure: '750 kPa', vapour: { temperature: '24.0 degC', compressibility: '0.86' } })
    expect(text).toContain('24.0 degC, Z 0.86 as agreed')
    expect(text).toContain('VLE')
    expect(text).toContain('API MPMS 11.2.4-2007 (GPA TP-27), tables 53E and 54E')
    expect(text).not.toContain('[U+')
  })
})
