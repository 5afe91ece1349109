import { Buffer } from 'node:buffer'
import { reconciliationCsv } from '../../documents/reconciliation-csv.ts'
import { fileStem } from '../../documents/reconciliation-words.ts'
import { reconciliationPdf } from '../../documents/reconciliation.ts'
import type { Handler } from '../context.ts'
import { reconcileLedger } from '../reconcile-ledger.ts'

export const reconcile: Handler<'reconcile'> = async (period, { store }) => reconcileLedger(store, period)

export const reconciliationDocument: Handler<'reconciliation-document'> = async ({ format, ...period }, { store, now, software }) => {
  const report = await reconcileLedger(store, period)
  const name = `${fileStem(report)}.${format}`
  if (format === 'csv') return { name, type: 'text/csv', file: Buffer.from(reconciliationCsv(report), 'utf8').toString('base64') }
  const pdf = await reconciliationPdf(report, { at: now(), software })
  return { name, type: 'application/pdf', file: Buffer.from(pdf).toString('base64') }
}
