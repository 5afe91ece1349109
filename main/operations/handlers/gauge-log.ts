import { Buffer } from 'node:buffer'
import { pickGauges as pick, saidOfPressures, withProbeLevels } from '../../../core/gauge/index.ts'
import { orRefuse, refused } from '../../../core/refusal/index.ts'
import { readGaugeLogCsv } from '../../exchange/gauge-log.ts'
import { readProbeCsv } from '../../exchange/probe-reading.ts'
import type { Handler } from '../context.ts'

export const readGaugeLog: Handler<'read-gauge-log'> = async ({ file, name = 'gauge log', zone = 'UTC' }) => {
  if (zone !== 'UTC' && !Intl.supportedValuesOf('timeZone').includes(zone)) orRefuse(refused({ code: 'out-of-range', path: 'zone', value: zone, limit: 'an IANA time zone, as Europe/Lisbon or UTC', clause: 'HOUSE gauge log' }))
  return orRefuse(readGaugeLogCsv(Buffer.from(file, 'base64'), name, zone))
}

export const pickGauges: Handler<'pick-gauges'> = async ({ log, tank, probe }) => {
  if (probe === undefined) return orRefuse(pick(log, tank))
  const levels = withProbeLevels(log, tank, probe)
  return { ...orRefuse(pick(levels.log, tank)), fromPressures: saidOfPressures(levels) }
}

export const readProbe: Handler<'read-probe'> = async ({ file, name = 'probe reading' }) => {
  const { tank = null, probe } = orRefuse(readProbeCsv(Buffer.from(file, 'base64'), name))
  return { tank, probe }
}
