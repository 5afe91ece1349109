import { closingChecks } from '../../core/reconciliation/index.ts'
import type { Software } from '../../core/ticket/index.ts'
import type { Recomputes } from '../store/index.ts'
import { closingFacts } from './closing-facts.ts'

/** That a file was whole is told by no entry afterwards. */
const NOT_TOLD = { whole: true, detail: '' } as const

/** Entries are made again by the functions that made them. */
export function recomputesBy(software: Software): Recomputes {
  return { software, closingChecks: async (ledger, period, words) => closingChecks(await closingFacts(ledger, period, NOT_TOLD), words) }
}
