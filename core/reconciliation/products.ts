import { lossGain } from './book-and-measured.ts'
import type { Limit, LossGain } from './loss-gain.ts'
import { Decimal, type VolumeUnit } from '../units/index.ts'
import type { Reconciliation, TankReconciliation } from './reconciliation.ts'

/** A reconciled tank, and the figures that its product adds up, each as written. */
export interface ReconciledTank {
  readonly report: TankReconciliation
  readonly limit: Limit
  readonly figures: {
    readonly unit: VolumeUnit; readonly opening: string; readonly receipts: string[]; readonly deliveries: string[]; readonly transfersIn: string[]; readonly transfersOut: string[]; readonly adjustments: string[]; readonly closing: string
  }
}

/**
 * Products as the sum of their tanks: inventories add up, receipts, deliveries, transfers and adjustments are put together, and the
 * limit is taken of the product's own throughput, its fixed part once.
 * @param tanks reconciled tanks, whose figures were accepted one by one
 * @source MPMS-23.1
 */
export function reconcileProducts(tanks: readonly ReconciledTank[]): Reconciliation['products'] {
  const codes = [...new Set(tanks.map(({ report }) => report.product))]
  return codes.flatMap((product) => {
    const [first, ...others] = tanks.filter(({ report }) => report.product === product)
    if (first === undefined) return []
    const result = productResult(first, others)
    return result === undefined ? [] : [{ product, productName: first.report.productName, tanks: [first, ...others].map(({ report }) => report.tank), result }]
  })
}

function productResult(first: ReconciledTank, others: readonly ReconciledTank[]): LossGain | undefined {
  const { unit } = first.figures
  const tanks = [first, ...others]
  const total = (pick: (result: LossGain) => { readonly value: string }): string =>
    `${tanks.reduce((sum, { report }) => sum.plus(pick(report.result).value), new Decimal(0)).toFixed()} ${unit}`
  const outcome = lossGain({
    unit, limit: first.limit, opening: total((result) => result.opening), closing: total((result) => result.measuredClosing),
    receipts: tanks.flatMap(({ figures }) => figures.receipts), deliveries: tanks.flatMap(({ figures }) => figures.deliveries),
    transfersIn: tanks.flatMap(({ figures }) => figures.transfersIn), transfersOut: tanks.flatMap(({ figures }) => figures.transfersOut), adjustments: tanks.flatMap(({ figures }) => figures.adjustments),
  })
  return outcome.ok ? outcome.value : undefined
}
