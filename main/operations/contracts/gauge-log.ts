import { z } from 'zod'
import { gaugeLogSchema, pickedGaugesSchema, pickGaugesInputSchema, probeReadingSchema } from '../../../core/gauge/index.ts'
import { contract, ROLES } from './contract.ts'

export const readGaugeLog = contract({
  name: 'read-gauge-log', roles: ROLES, ledger: 'none', file: 'file',
  says: 'A gauge log as CSV → its readings, or every wrong cell with its line',
  input: z.strictObject({
    name: z.string().max(200).optional(), file: z.base64(),
    /** IANA zone of the clock that the log's times are from; UTC where it is not named. */
    zone: z.string().max(60).optional(),
  }),
  output: gaugeLogSchema,
})

export const pickGauges = contract({
  name: 'pick-gauges', roles: ROLES, ledger: 'none',
  says: 'Gauge log and tank → when the tank was still, and the moments that open and close each movement; with the tank\'s probe, levels from pressures too',
  input: pickGaugesInputSchema, output: pickedGaugesSchema,
})

export const readProbe = contract({
  name: 'read-probe', roles: ROLES, ledger: 'none', file: 'file',
  says: 'A hydrostatic probe\'s reading as CSV → modules and settings for probe-profile',
  input: z.strictObject({ name: z.string().max(200).optional(), file: z.base64() }),
  output: z.strictObject({ tank: z.string().nullable(), probe: probeReadingSchema }),
})
