/**
 * Transfers: opening and closing gauges make a receipt or a delivery.
 * In: two snapshots of one tank. Out: {@link TransferResult}. MPMS-12.1.1.
 */
export { transferQuantity } from './opening-closing.ts'
export {
  lineFillSchema, TRANSFER_KINDS, transferInputSchema, transferResultSchema,
  type Moved, type TransferInput, type TransferKind, type TransferResult,
} from './transfer.ts'
