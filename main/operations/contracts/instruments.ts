import { z } from 'zod'
import { instrumentSchema } from '../../../core/ledger/index.ts'
import { by, contract, ROLES } from './contract.ts'

export const setInstrument = contract({
  name: 'set-instrument', roles: ['administrator', 'inspector'], ledger: 'writes',
  says: 'Enter an instrument, or a new version of it, with its effective date',
  input: z.strictObject({ instrument: instrumentSchema, effectiveFrom: z.string(), by }),
  output: z.strictObject({ seq: z.number(), hash: z.string() }),
})

export const INSTRUMENT_STATES = ['in-time', 'due', 'never-verified', 'no-interval', 'out-of-service'] as const

export const listInstruments = contract({
  name: 'list-instruments', roles: ROLES, ledger: 'reads',
  says: 'Instruments in force, when each was verified last, and what is due',
  input: z.strictObject({ at: z.string().optional(), tank: z.string().optional() }),
  output: z.strictObject({
    at: z.string(),
    instruments: z.array(z.strictObject({
      instrument: instrumentSchema, seq: z.number(), effectiveFrom: z.string(),
      verified: z.strictObject({ seq: z.number(), at: z.string(), verdict: z.enum(['within', 'outside']) }).nullable(),
      dueAt: z.string().nullable(), state: z.enum(INSTRUMENT_STATES),
    })),
  }),
})
