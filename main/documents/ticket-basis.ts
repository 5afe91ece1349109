import { z } from 'zod'
import { productSchema } from '../../core/quantity/index.ts'
import { tankSchema } from '../../core/tank/index.ts'

/** What a ticket was computed with: the tank and the product in the versions that it names. */
export const basisSchema = z.strictObject({ tank: tankSchema, product: productSchema })
export type Basis = Readonly<z.infer<typeof basisSchema>>

export const TICKET_FILE = 'ticket.json'
export const BASIS_FILE = 'basis.json'
