import type { Reconciliation, TankReconciliation } from '../../core/reconciliation/index.ts'

type Result = TankReconciliation['result']

/** A row of the month's table: a product over its tanks, or one tank. */
export type MonthRow =
  | { readonly kind: 'product'; readonly key: string; readonly product: string; readonly name: string; readonly unit: string; readonly result: Result }
  | { readonly kind: 'tank'; readonly key: string; readonly tank: TankReconciliation; readonly result: Result }

/** Each product with its total, then its tanks, in the order of the report. */
export function monthRows(report: Reconciliation): readonly MonthRow[] {
  return report.products.flatMap(({ product, productName, result }): MonthRow[] => [
    { kind: 'product', key: `product ${product}`, product, name: productName, unit: result.lossGain.unit, result },
    ...report.tanks.filter((tank) => tank.product === product).map((tank): MonthRow => ({ kind: 'tank', key: `tank ${tank.tank} ${tank.product}`, tank, result: tank.result })),
  ])
}

const BEFORE = ['opening', 'receipts'] as const
const AFTER = ['adjustments', 'bookClosing', 'measuredClosing', 'lossGain', 'throughput'] as const
export type MonthFigure = (typeof BEFORE)[number] | 'transfersIn' | 'deliveries' | 'transfersOut' | (typeof AFTER)[number]

/** The figures of a row in the order of the columns; transfers only where there were some. */
export function figuresOf({ tanks }: Pick<Reconciliation, 'tanks'>): readonly MonthFigure[] {
  const moved = tanks.some(({ transfers }) => transfers.length > 0)
  return [...BEFORE, ...(moved ? ['transfersIn' as const] : []), 'deliveries', ...(moved ? ['transfersOut' as const] : []), ...AFTER]
}

/** Rows that are unfolded, after one was folded or unfolded. */
export function toggled(open: ReadonlySet<string>, key: string): ReadonlySet<string> {
  const next = new Set(open)
  if (!next.delete(key)) next.add(key)
  return next
}
