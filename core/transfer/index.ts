/**
 * Transfers: opening and closing gauges make a receipt or a delivery, or a movement inside the terminal.
 * In: snapshots of one tank or several. Out: {@link TransferResult}, {@link StockResult}. MPMS-12.1.1.
 */
export { transferQuantity } from './opening-closing.ts'
export {
  lineFillSchema, TRANSFER_KINDS, transferInputSchema, transferResultSchema,
  type Moved, type TransferInput, type TransferKind, type TransferResult,
} from './transfer.ts'
export { sumOfLegs, type SignedVolume } from './stock-difference.ts'
export {
  lineContentsSchema, STOCK_MOVEMENTS, stockInputSchema, stockLegResultSchema, stockResultSchema,
  type FilledLine, type GaugedTank, type LineStanding, type RegradedTank, type StockInput, type StockLegResult, type StockMovementKind, type StockResult,
} from './stock-input.ts'
export { stockMovement } from './stock-movement.ts'
