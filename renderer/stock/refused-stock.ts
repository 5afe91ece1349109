import type { SpokenFinding } from '../bridge/bridge.ts'
import { placeSpoken, sayByName, type PlacedFinding } from '../gauge/placed-findings.ts'
import { fieldOfPath, gaugeOfPath, nameOfStockField } from './compute-stock.ts'
import type { StockForm } from './stock-form.ts'

/** What `post-stock-movement` refused, on the fields of the sheet. */
export function placeRefused(findings: readonly SpokenFinding[], form: StockForm): readonly PlacedFinding[] {
  return findings.flatMap((finding) => {
    const gauge = gaugeOfPath(finding.path, form)
    if (gauge) {
      const message = sayByName(finding.message, finding.path, `${gauge.column}.${gauge.rest}`)
      return placeSpoken(gauge.column, [{ path: `${gauge.column}.${gauge.rest}`, message, clause: finding.clause }])
    }
    const field = fieldOfPath(finding.path, form)
    return [{ field, message: sayByName(finding.message, finding.path, nameOfStockField(field, form)), clause: finding.clause }]
  })
}
