import type { Reconciliation, TankReconciliation } from '../reconciliation/index.ts'

/** How a tank is named beside the others of a report: one that changed its product stands there under each, and says which. */
export function tankName({ tanks }: Pick<Reconciliation, 'tanks'>, { tank, product }: Pick<TankReconciliation, 'tank' | 'product'>): string {
  return tanks.filter((other) => other.tank === tank).length > 1 ? `${tank} ${product}` : tank
}
