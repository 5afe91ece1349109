import { z } from 'zod'
import { gaugeEventSchema, GAUGE_EVENTS } from '../../../core/ledger/index.ts'
import { by, contract, ROLES } from './contract.ts'

const event = gaugeEventSchema.omit({ source: true })

export const recordGaugeEvent = contract({
  name: 'record-gauge-event', roles: ROLES, ledger: 'writes', says: 'Enter an alarm or another event of a gauge as somebody saw it',
  input: z.strictObject({ event, by }),
  output: z.strictObject({ seq: z.number(), hash: z.string() }),
})

export const recordGaugeEvents = contract({
  name: 'record-gauge-events', roles: ROLES, ledger: 'writes', says: 'Enter the alarms and faults picked from a gauge log; those on record already are left out',
  input: z.strictObject({ events: z.array(event).min(1).max(1000), by }),
  output: z.strictObject({ recorded: z.number(), known: z.number(), head: z.string() }),
})

export const gaugeAlarms = contract({
  name: 'gauge-alarms', roles: ROLES, ledger: 'reads', passive: true, says: 'Alarms and faults of gauges that nobody has cleared',
  input: z.strictObject({}),
  output: z.strictObject({
    alarms: z.array(z.strictObject({ seq: z.number(), tank: z.string(), gauge: z.string().nullable(), kind: z.enum(GAUGE_EVENTS).extract(['alarm', 'fault']), at: z.string(), message: z.string() })),
  }),
})
