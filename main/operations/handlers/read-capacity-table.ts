import { Buffer } from 'node:buffer'
import { orRefuse } from '../../../core/refusal/index.ts'
import { readCapacityTableCsv } from '../../exchange/capacity-table-csv.ts'
import type { Handler } from '../context.ts'

export const readCapacityTable: Handler<'read-capacity-table'> = async ({ file, layout, decimalMark, jumps }) =>
  orRefuse(readCapacityTableCsv(Buffer.from(file, 'base64'), 'file', { layout, decimalMark, jumps })).table
