import { z } from 'zod'
import { probeReadingSchema } from '../../../core/gauge/index.ts'
import { by, contract, ROLES } from './contract.ts'

const text = z.string().max(64)
const setSchema = z.strictObject({ module: z.string(), before: text, found: text, after: text })

export const zeroProbe = contract({
  name: 'zero-probe', roles: ['inspector', 'accountant'], ledger: 'writes',
  says: 'Set emerged modules of a hydrostatic probe to zero: offsets before and after stand in the ledger, with the reason',
  input: z.strictObject({
    tank: z.string(), readAt: z.string(), by, probe: probeReadingSchema,
    /** Names of modules; absent: those that the instrument may set by itself. */
    modules: z.array(z.string()).min(1).max(12).optional(),
    /** Needed where a person names the modules. */
    reason: z.string().max(500).optional(),
  }),
  output: z.strictObject({ seq: z.number(), hash: z.string(), modules: z.array(setSchema) }),
})

export const probeZeros = contract({
  name: 'probe-zeros', roles: ROLES, ledger: 'reads',
  says: 'The zero offsets of a tank\'s probe as they stand, and how they came about',
  input: z.strictObject({ tank: z.string() }),
  output: z.strictObject({
    standing: z.array(z.strictObject({ module: z.string(), offset: text })),
    history: z.array(z.strictObject({ seq: z.number(), readAt: z.string(), by: z.string(), automatic: z.boolean(), reason: z.string(), modules: z.array(setSchema) })),
  }),
})
