import { z } from 'zod'
import { densitySchema, gaugeSnapshotSchema } from '../../../core/gauge/index.ts'
import { APPORTIONED_BY, apportionedSchema, stockMovementSchema } from '../../../core/ledger/index.ts'
import { lineContentsSchema, STOCK_MOVEMENTS, stockInputSchema, stockResultSchema } from '../../../core/transfer/index.ts'
import { quantitySchema } from '../../../core/worksheet/index.ts'
import { by, contract, ROLES } from './contract.ts'
import { late } from './late.ts'

const posted = z.strictObject({ seq: z.number(), hash: z.string() })
const gauges = z.strictObject({ opening: gaugeSnapshotSchema, closing: gaugeSnapshotSchema })
const booked = z.strictObject({ period: z.string(), bookedAt: z.string() })
const line = z.strictObject({ code: z.string().min(1).max(40), product: z.string(), opening: lineContentsSchema, closing: lineContentsSchema })

/** A movement inside the terminal; its gauges say which tanks and products, the ledger has them. */
export const stockDraftSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('tank-to-tank'), from: gauges, to: gauges, line: line.optional() }),
  z.strictObject({ kind: z.literal('blend'), from: z.array(gauges).min(1).max(10), to: gauges, line: line.optional() }),
  z.strictObject({
    kind: z.literal('regrade'), gauge: gaugeSnapshotSchema,
    /** The new name, and the density where it is stated at the new product's own base conditions. */
    to: z.strictObject({ product: z.string(), density: densitySchema.optional() }),
  }),
  z.strictObject({ kind: z.literal('water-draw-off'), tank: gauges, netOil: z.string().max(64).optional() }),
  z.strictObject({ kind: z.literal('line-fill'), line }),
])

export const stockMovement = contract({
  name: 'stock-movement', roles: ROLES, ledger: 'none',
  says: 'Gauges → what a movement inside the terminal books: tank to tank, blend, regrade, water draw-off, line fill',
  input: stockInputSchema, output: stockResultSchema,
})

export const postStockMovement = contract({
  name: 'post-stock-movement', roles: ['accountant'], approval: true, ledger: 'writes',
  says: 'Book a movement inside the terminal by the gauges of its tanks, with its reason',
  input: z.strictObject({ movement: stockDraftSchema, reason: z.string().max(500), reference: z.string().max(80).optional(), by, late, draft: z.string().optional() }),
  output: posted.extend({ movement: stockMovementSchema }),
})

/** The tank's version that came with a regrade and is in force still. */
const stillInForce = z.strictObject({ tank: z.string(), product: z.string(), seq: z.number(), effectiveFrom: z.string() })

export const voidStockMovement = contract({
  name: 'void-stock-movement', roles: ['accountant'], approval: true, ledger: 'writes',
  says: 'Void a movement inside the terminal by a later entry that gives the reason; the movement itself stays as it is',
  input: z.strictObject({
    /** Entry of the movement. */
    seq: z.number().int().positive(), reason: z.string().max(500), by, late,
  }),
  output: posted.extend({
    /** After a regrade: the tank as it was renamed, which a void leaves in force; enter the tank anew where it keeps its old product, after what is closed. */
    tankStands: stillInForce.nullable(),
  }),
})

/** A stock movement as the list has it. */
export const stockLineSchema = z.strictObject({
  seq: z.number(), at: z.string(), enteredAt: z.string(), by: z.string(), hash: z.string(), movement: stockMovementSchema,
  late: booked.nullable(),
  /** The entry that voided it; where that counts late, the movement stands in its closed period and is taken back in an open one. */
  voided: z.strictObject({ seq: z.number(), at: z.string(), by: z.string(), reason: z.string(), late: booked.nullable() }).nullable(),
})

export const listStockMovements = contract({
  name: 'list-stock-movements', roles: ROLES, ledger: 'reads',
  says: 'Movements inside the terminal, newest first',
  input: z.strictObject({ limit: z.number().int().min(1).max(500).optional(), before: z.number().int().optional() }),
  output: z.strictObject({ movements: z.array(stockLineSchema), more: z.boolean() }),
})

export const readStockMovement = contract({
  name: 'read-stock-movement', roles: ROLES, ledger: 'reads',
  says: 'One movement inside the terminal whole: gauges, worksheets, difference',
  input: z.strictObject({ seq: z.number().int().positive() }),
  output: stockLineSchema,
})

const party = z.string().min(1).max(16)

export const allocateStock = contract({
  name: 'allocate-stock', roles: ['accountant'], approval: true, ledger: 'writes',
  says: 'Share out among owners what an entry booked, or change the owner of product where it lies',
  input: z.strictObject({
    /** The entry whose change is shared out; absent: product changes hands in place, and the shares add up to 0. */
    of: z.number().int().positive().optional(),
    /** Tank or line. */
    tank: z.string(), product: z.string(),
    /** When it counts; left out: when the movement counts. */
    at: z.string().optional(),
    shares: z.array(z.strictObject({ party, nsv: z.string().max(64) })).min(1).max(20),
    reason: z.string().max(500), by,
  }),
  output: posted,
})

/** A booked change that nobody's shares add up to yet. */
export const unsharedSchema = z.strictObject({
  seq: z.number(), kind: z.enum(['receipt', 'delivery', 'adjustment', 'correction', ...STOCK_MOVEMENTS]), number: z.string(),
  place: z.enum(['tank', 'line']), tank: z.string(), product: z.string(), bookedAt: z.string(), nsv: quantitySchema,
})

export const ownersStock = contract({
  name: 'owners-stock', roles: ROLES, ledger: 'reads',
  says: 'Whose product stands in which tank or line at an instant, and what is not shared out yet',
  input: z.strictObject({ at: z.string().optional(), tank: z.string().optional() }),
  output: z.strictObject({
    at: z.string(),
    places: z.array(z.strictObject({
      tank: z.string(), product: z.string(), book: quantitySchema,
      owners: z.array(z.strictObject({ party: z.string(), name: z.string(), nsv: quantitySchema, belowZero: z.boolean() })),
      /** Book less what owners have. */
      unshared: quantitySchema,
    })),
    /** The newest first. */
    unshared: z.array(unsharedSchema), more: z.boolean(),
  }),
})

export const apportion = contract({
  name: 'apportion', roles: ROLES, ledger: 'reads',
  says: 'Propose how a loss or gain is shared among owners, by their stock or throughput in a period; books nothing',
  input: z.strictObject({
    tank: z.string(), product: z.string(), from: z.string(), to: z.string(), basis: z.enum(APPORTIONED_BY),
    /** Signed; left out: the loss or gain of the tank in the period. */
    nsv: z.string().max(64).optional(),
  }),
  output: apportionedSchema,
})
