import type { Handlers } from './context.ts'
import { about } from './handlers/about.ts'
import { auditTrail, exportAuditTrail, readEntry } from './handlers/audit-trail.ts'
import { gaugeAlarms, recordGaugeEvent, recordGaugeEvents } from './handlers/gauge-events.ts'
import { backupNow, backupState, listBackups, retireBackups, setBackupRules, verifyBackup } from './handlers/backup.ts'
import { blendDensity, densityConversion, massAndWeight, waterDensity } from './handlers/density.ts'
import { closeSession, desk, lockDesk, openSession } from './handlers/desk.ts'
import { discardDraft, listDrafts, saveDraft } from './handlers/drafts.ts'
import { recordGaugeVerification, verifyGauge } from './handlers/gauges.ts'
import { importTerminal } from './handlers/import-terminal.ts'
import { postAdjustment, recordInventory } from './handlers/inventory.ts'
import { createIdentity, importIdentity } from './handlers/identities.ts'
import { exportLedger, importLedger, restoreBackup } from './handlers/ledger-copies.ts'
import { listEntries, verifyDocuments, verifyLedger } from './handlers/ledger.ts'
import { lossGain } from './handlers/loss-gain.ts'
import { postTicket } from './handlers/post-ticket.ts'
import { pickGauges, readGaugeLog, readProbe } from './handlers/gauge-log.ts'
import { listPeople, setDeskRules, setPassphrase, setPerson } from './handlers/people.ts'
import { closePeriod, closingChecks } from './handlers/close-period.ts'
import { listPeriods, openPeriod, readBalances, readPeriod } from './handlers/periods.ts'
import { sealDocument, verifySeal } from './handlers/seals.ts'
import { probeProfile } from './handlers/probe-profile.ts'
import { approveProposal, listProposals, propose, rejectProposal, withdrawProposal } from './handlers/proposals.ts'
import { probeZeros, zeroProbe } from './handlers/probe-zero.ts'
import { computeCapacityTable } from './handlers/compute-capacity-table.ts'
import { readCapacityTable } from './handlers/read-capacity-table.ts'
import { reconcile, reconciliationDocument } from './handlers/reconcile.ts'
import { setLimit, setParty, setProduct, setTank, setTerminal } from './handlers/set-up.ts'
import { staticQuantity } from './handlers/static-quantity.ts'
import { copyLedger, ledgerHead, setStorage, storage } from './handlers/storage.ts'
import { tankVersions } from './handlers/tank-versions.ts'
import { terminal } from './handlers/terminal.ts'
import { listTickets, readTicket, ticketDocument, voidTicket } from './handlers/tickets.ts'
import { listInstruments, setInstrument } from './handlers/instruments.ts'
import { allocateStock, apportion, ownersStock } from './handlers/owners.ts'
import { listStockMovements, postStockMovement, readStockMovement, stockMovement } from './handlers/stock.ts'
import { voidStockMovement } from './handlers/void-stock.ts'
import { transferQuantity } from './handlers/transfer-quantity.ts'
import { verifyDocument } from './handlers/verify-document.ts'
import { volumeCorrection } from './handlers/volume-correction.ts'

/** Who does which operation: one handler for every contract. */
export const HANDLERS: Handlers = {
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
}
