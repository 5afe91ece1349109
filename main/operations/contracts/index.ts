/**
 * THE table: every operation with its sentence and schemas. Window, browser and command line see this and nothing else of main.
 */
import type { z } from 'zod'
import { backupNow, backupState, exportLedger, importLedger, listBackups, restoreBackup, retireBackups, setBackupRules, verifyBackup } from './backup.ts'
import { blendDensity, densityConversion, massAndWeight, waterDensity } from './density.ts'
import { closeSession, desk, listPeople, lockDesk, openSession, setDeskRules, setPassphrase, setPerson } from './desk.ts'
import { discardDraft, listDrafts, saveDraft } from './drafts.ts'
import { recordGaugeVerification, verifyGauge } from './gauges.ts'
import { postAdjustment, recordInventory } from './inventory.ts'
import { about, listEntries, verifyLedger } from './ledger.ts'
import { lossGain } from './loss-gain.ts'
import { pickGauges, readGaugeLog, readProbe } from './gauge-log.ts'
import { closePeriod, closingChecks, listPeriods, openPeriod, readBalances, readPeriod, sealDocument, verifySeal } from './periods.ts'
import { probeProfile } from './probe-profile.ts'
import { approveProposal, listProposals, propose, rejectProposal, withdrawProposal } from './proposals.ts'
import { probeZeros, zeroProbe } from './probe-zero.ts'
import { computeCapacityTable } from './compute-capacity-table.ts'
import { readCapacityTable } from './read-capacity-table.ts'
import { reconcile, reconciliationDocument } from './reconcile.ts'
import { createIdentity, importIdentity, importTerminal, setLimit, setParty, setProduct, setTank, setTerminal } from './set-up.ts'
import { staticQuantity } from './static-quantity.ts'
import { copyLedger, ledgerHead, setStorage, storage } from './storage.ts'
import { tankVersions } from './tank-versions.ts'
import { terminal } from './terminal.ts'
import { listTickets, postTicket, readTicket, ticketDocument, voidTicket } from './tickets.ts'
import { listInstruments, setInstrument } from './instruments.ts'
import { allocateStock, apportion, listStockMovements, ownersStock, postStockMovement, readStockMovement, stockMovement, voidStockMovement } from './stock.ts'
import { transferQuantity } from './transfer-quantity.ts'
import { auditTrail, exportAuditTrail, readEntry } from './audit-trail.ts'
import { gaugeAlarms, recordGaugeEvent, recordGaugeEvents } from './gauge-events.ts'
import { verifyDocument, verifyDocuments } from './verify-document.ts'
import { volumeCorrection } from './volume-correction.ts'

export const OPERATIONS = {
  'volume-correction': volumeCorrection,
  'density-conversion': densityConversion,
  'blend-density': blendDensity,
  'mass-and-weight': massAndWeight,
  'water-density': waterDensity,
  'static-quantity': staticQuantity,
  'transfer-quantity': transferQuantity,
  'verify-gauge': verifyGauge,
  'probe-profile': probeProfile,
  'read-probe': readProbe,
  'zero-probe': zeroProbe,
  'probe-zeros': probeZeros,
  'read-gauge-log': readGaugeLog,
  'pick-gauges': pickGauges,
  'loss-gain': lossGain,
  'read-capacity-table': readCapacityTable,
  'compute-capacity-table': computeCapacityTable,
  'verify-document': verifyDocument,
  about,
  terminal,
  'tank-versions': tankVersions,
  'list-tickets': listTickets,
  'read-ticket': readTicket,
  'ticket-document': ticketDocument,
  'post-ticket': postTicket,
  'void-ticket': voidTicket,
  'record-inventory': recordInventory,
  'record-gauge-verification': recordGaugeVerification,
  'post-adjustment': postAdjustment,
  'stock-movement': stockMovement,
  'post-stock-movement': postStockMovement,
  'void-stock-movement': voidStockMovement,
  'list-stock-movements': listStockMovements,
  'read-stock-movement': readStockMovement,
  'allocate-stock': allocateStock,
  'owners-stock': ownersStock,
  apportion,
  'set-instrument': setInstrument,
  'list-instruments': listInstruments,
  periods: listPeriods,
  'read-period': readPeriod,
  'open-period': openPeriod,
  'closing-checks': closingChecks,
  'close-period': closePeriod,
  'seal-document': sealDocument,
  'verify-seal': verifySeal,
  balances: readBalances,
  reconcile,
  'reconciliation-document': reconciliationDocument,
  'list-drafts': listDrafts,
  'save-draft': saveDraft,
  'discard-draft': discardDraft,
  'audit-trail': auditTrail,
  'export-audit-trail': exportAuditTrail,
  'read-entry': readEntry,
  'record-gauge-event': recordGaugeEvent,
  'record-gauge-events': recordGaugeEvents,
  'gauge-alarms': gaugeAlarms,
  'list-entries': listEntries,
  'verify-ledger': verifyLedger,
  'verify-documents': verifyDocuments,
  'backup-now': backupNow,
  'list-backups': listBackups,
  'backup-state': backupState,
  'set-backup-rules': setBackupRules,
  'verify-backup': verifyBackup,
  'retire-backups': retireBackups,
  'restore-backup': restoreBackup,
  'export-ledger': exportLedger,
  'import-ledger': importLedger,
  'ledger-head': ledgerHead,
  storage,
  'set-storage': setStorage,
  'copy-ledger': copyLedger,
  'set-terminal': setTerminal,
  'set-tank': setTank,
  'set-product': setProduct,
  'set-party': setParty,
  'set-limit': setLimit,
  'create-identity': createIdentity,
  'import-identity': importIdentity,
  'import-terminal': importTerminal,
  desk,
  'open-session': openSession,
  'close-session': closeSession,
  'lock-desk': lockDesk,
  'list-people': listPeople,
  'set-person': setPerson,
  'set-passphrase': setPassphrase,
  'set-desk-rules': setDeskRules,
  propose,
  'list-proposals': listProposals,
  'approve-proposal': approveProposal,
  'reject-proposal': rejectProposal,
  'withdraw-proposal': withdrawProposal,
} as const

export type OperationName = keyof typeof OPERATIONS
export const OPERATION_NAMES = Object.keys(OPERATIONS) as readonly OperationName[]
export type InputOf<N extends OperationName> = z.input<(typeof OPERATIONS)[N]['input']>
export type OutputOf<N extends OperationName> = z.output<(typeof OPERATIONS)[N]['output']>
export { backupRulesSchema, type BackupRules, type Keep, type ListedBackup, type TakenBackup } from './backup.ts'
export { ROLES, type Contract, type Role } from './contract.ts'
export { COMMODITY_WORDS, INSTRUMENT_WORDS, STOCK_MOVEMENT_WORDS } from './kinds-in-words.ts'

/** A step of a long operation. */
export interface Progress { readonly done: number; readonly of: number; readonly what: string }
