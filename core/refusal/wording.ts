/** What a sentence is made of. */
interface Told { readonly path: string; readonly value: string; readonly limit: string; readonly clause: string }

type Sentence = (finding: Told) => string

/**
 * Every code that can be refused, with the one sentence that says it. Window, command line and documents use these.
 * Each code has a file in `tests/refusals/` that provokes it.
 */
const SENTENCES = {
  // reading what was written
  'malformed-input': (f) => `${f.path || 'The input'} is not of the expected form: ${f.limit}.`,
  'missing-value': (f) => `${f.path} is missing: ${f.limit}.`,
  'unreadable-value': (f) => `${f.path}: “${f.value}” cannot be read. Write ${f.limit}.`,
  'unit-not-accepted': (f) => `${f.path}: the unit in “${f.value}” is not accepted here. Write ${f.limit}.`,
  'out-of-range': (f) => `${f.path} is ${f.value}; the limit is ${f.limit} (${f.clause}).`,
  'value-not-used': (f) => `${f.path}: “${f.value}” would not be used: ${f.limit}.`,
  'unknown-operation': (f) => `${f.path}: there is no “${f.value}”; ${f.limit}.`,
  // volume correction
  'density-outside-group': (f) => `${f.path}: ${f.value} has a density at 60 °F outside its group: ${f.limit} (${f.clause}).`,
  'density-not-converged': (f) => `${f.path}: no base density was found for ${f.value} within ${f.limit} (${f.clause}).`,
  'curve-not-in-order': (f) => `${f.path}: ${f.value} does not continue the product curve; ${f.limit}.`,
  'curve-slope-implausible': (f) => `${f.path}: from the point before, the curve changes by ${f.value}; the limit is ${f.limit} (${f.clause}).`,
  'temperature-outside-curve': (f) => `${f.path}: ${f.value} is outside the product curve (${f.limit}); a curve is not carried on past its ends.`,
  'density-off-curve': (f) => `${f.path}: ${f.value} is further from its curve or equation than is allowed: ${f.limit} (${f.clause}).`,
  // tank and capacity table
  'capacity-table-line': (f) => `${f.path}: “${f.value}” is not a line of a capacity table. Write ${f.limit}.`,
  'capacity-table-not-increasing': (f) => `${f.path}: ${f.value} does not continue the table; ${f.limit}.`,
  'capacity-table-incomplete': (f) => `${f.path}: the capacity table lacks ${f.limit}.`,
  'capacity-table-increment': (f) => `${f.path}: the increment ${f.value} does not lead from its line to the next; ${f.limit}.`,
  'capacity-table-jump': (f) => `${f.path}: ${f.value} is worth more or less than the steps beside it: ${f.limit} (${f.clause}).`,
  'level-outside-table': (f) => `${f.path}: a level of ${f.value} is outside the capacity table (${f.limit}).`,
  'ullage-beyond-reference-height': (f) => `${f.path}: an ullage of ${f.value} is more than the reference gauge height (${f.limit}).`,
  'reference-height-differs': (f) => `${f.path}: observed reference gauge height ${f.value} differs from the certificate by more than is allowed: ${f.limit}.`,
  'water-above-level': (f) => `${f.path}: a water cut of ${f.value} stands above the liquid level (${f.limit}).`,
  'roof-in-critical-zone': (f) => `${f.path}: at ${f.value} the roof is partly afloat; no custody gauge between ${f.limit} (${f.clause}).`,
  'critical-zone-allowed': (f) => `${f.path}: at ${f.value} the roof was partly afloat, in its critical zone; booked all the same: ${f.limit} (${f.clause}).`,
  'water-above-usual': (f) => `${f.path}: a water cut of ${f.value} is more than this tank usually shows: ${f.limit} (${f.clause}).`,
  // tape, spots, samples, automatic gauges
  'readings-differ': (f) => `${f.path}: the readings ${f.value} cannot be taken: ${f.limit} (${f.clause}).`,
  'readings-scattered': (f) => `${f.path}: the readings ${f.value} agree only within ${f.limit} (${f.clause}).`,
  'reference-height-not-read': (f) => `${f.path}: the ullage was taken without reading the reference gauge height; that of the certificate was used, ${f.limit}.`,
  'spots-too-few': (f) => `${f.path}: the liquid temperature is from ${f.value} of the spots that are needed: ${f.limit} (${f.clause}).`,
  'spots-differ': (f) => `${f.path}: the spots differ by ${f.value}; the limit is ${f.limit} (${f.clause}).`,
  'samples-incomplete': (f) => `${f.path}: the samples (${f.value}) do not stand for the whole tank: ${f.limit} (${f.clause}).`,
  'sample-of-another-day': (f) => `${f.path}: sample ${f.value} was not drawn on the day of the gauge, ${f.limit}.`,
  'sample-shared': (f) => `${f.path}: sample ${f.value} stands for both gauges, though ${f.limit}.`,
  'hybrid-density-differs': (f) => `${f.path}: the density from head differs from that of the sample by ${f.value}; the limit is ${f.limit}.`,
  'gauge-disturbed': (f) => `${f.path}: the automatic gauge reported ${f.value}, not ${f.limit}.`,
  'gauge-out-of-order': (f) => `${f.path}: the automatic gauge reported ${f.value}; its reading cannot be used: ${f.limit}.`,
  'gauge-not-verified': (f) => `${f.path}: the automatic gauge ${f.value} cannot make a custody ticket: ${f.limit} (${f.clause}).`,
  'gauge-out-of-limits': (f) => `${f.path}: the automatic gauge was off by ${f.value}; the limit is ${f.limit} (${f.clause}).`,
  'verification-levels-close': (f) => `${f.path}: the levels ${f.value} do not reach each third of the tank: ${f.limit} (${f.clause}).`,
  // hydrostatic probe and gauge log
  'probe-zero-outside-limit': (f) => `${f.path}: ${f.value}, more than the zero limit of ${f.limit}; check the module, and set it to zero with a reason (${f.clause}).`,
  'probe-mass-uncertain': (f) => `${f.path}: the pressures leave the mass uncertain by ${f.value}; the limit is ${f.limit}.`,
  'probe-figures-differ': (f) => `${f.path}: ${f.value} is not what the probe's pressures give (${f.limit}); take the probe's own figure, or take the probe off the gauge.`,
  'sample-missing': (f) => `${f.path}: sediment and water of ${f.value} has no sample; ${f.limit}.`,
  'zero-not-checked': (f) => `${f.path}: ${f.value} cannot be set to zero: ${f.limit}.`,
  'log-not-in-order': (f) => `${f.path}: ${f.value} is not later than the line before it of this tank (${f.limit}).`,
  'gauge-differs-from-log': (f) => `${f.path}: ${f.value} is not what the gauge log says (${f.limit}); pick it again, or take the log off the gauge.`,
  'gauge-not-settled': (f) => `${f.path}: the tank was not still, ${f.value}; by the rule that it is still when ${f.limit}.`,
  // transfer
  'closing-not-after-opening': (f) => `${f.path}: the closing gauge (${f.value}) must be later than the opening gauge (${f.limit}).`,
  'tank-differs': (f) => `${f.path}: gauged on ${f.value}, but this is a transfer of ${f.limit}.`,
  'product-differs': (f) => `${f.path}: ${f.value} was gauged where ${f.limit} was expected.`,
  'moved-wrong-way': (f) => `${f.path}: ${f.value} of net standard volume was moved; a ${f.limit}.`,
  'gauge-overlaps-ticket': (f) => `${f.path}: ${f.value} lies within the time that ${f.limit} already covers in this tank.`,
  'tank-named-twice': (f) => `${f.path}: tank ${f.value} takes part twice; ${f.limit}.`,
  'water-not-drawn': (f) => `${f.path}: the free water changed by ${f.value}; ${f.limit}.`,
  'regrade-gauges-differ': (f) => `${f.path}: ${f.value} under the new name, but ${f.limit} under the old; a regrade has one gauge.`,
  'alarm-not-standing': (f) => `${f.path}: there is nothing to clear, no ${f.value}; ${f.limit}.`,
  'unknown-entry': (f) => `${f.path}: entry ${f.value} is not what is looked for here; ${f.limit}.`,
  'another-name-since': (f) => `${f.path}: ${f.value} cannot be renamed then; ${f.limit}.`,
  // owners' stock
  'nothing-to-share': (f) => `${f.path}: entry ${f.value} books nothing there that could be shared out; ${f.limit}.`,
  'already-shared': (f) => `${f.path}: what entry ${f.value} booked there is shared out already; ${f.limit}.`,
  'shares-do-not-add-up': (f) => `${f.path}: the shares add up to ${f.value}; ${f.limit}.`,
  'party-named-twice': (f) => `${f.path}: ${f.value} has a share already; ${f.limit}.`,
  'owner-below-zero': (f) => `${f.path}: ${f.value}; an owner has ${f.limit}.`,
  'time-in-future': (f) => `${f.path}: ${f.value} is later than now (${f.limit}).`,
  // what is on record
  'unknown-tank': (f) => `${f.path}: there is no tank “${f.value}”. On record: ${f.limit}.`,
  'unknown-product': (f) => `${f.path}: there is no product “${f.value}”. On record: ${f.limit}.`,
  'unknown-party': (f) => `${f.path}: there is no party “${f.value}”. On record: ${f.limit}.`,
  'unknown-identity': (f) => `${f.path}: there is no signing identity “${f.value}”. On record: ${f.limit}.`,
  'unknown-ticket': (f) => `${f.path}: there is no ticket “${f.value}”; ${f.limit}.`,
  'unknown-draft': (f) => `${f.path}: there is no draft “${f.value}”; it may have been posted or discarded elsewhere (${f.limit}).`,
  'already-on-record': (f) => `${f.path}: “${f.value}” is already on record; ${f.limit}.`,
  'no-terminal': (f) => `${f.path}: this ledger has no terminal yet; ${f.limit}.`,
  // people and roles
  'session-needed': (f) => `Nobody is signed in at this ${f.path}, and ${f.value} needs somebody who is: ${f.limit}.`,
  'session-locked': (f) => `The ${f.path} is locked by ${f.value}; ${f.limit}.`,
  'not-permitted': (f) => `${f.path}: ${f.value} is not permitted; it needs ${f.limit}.`,
  'approval-needed': (f) => `${f.path}: ${f.value} needs two people at this terminal; ${f.limit}.`,
  'approver-is-preparer': (f) => `${f.path}: ${f.value} prepared this and cannot approve it; ${f.limit}.`,
  'not-proposable': (f) => `${f.path}: “${f.value}” cannot be prepared for somebody else; ${f.limit}.`,
  'unknown-proposal': (f) => `${f.path}: nothing waits for approval under “${f.value}”; ${f.limit}.`,
  'unknown-person': (f) => `${f.path}: nobody “${f.value}” is on record. On record: ${f.limit}.`,
  'another-name': (f) => `${f.path}: “${f.value}” is not who is at the desk; ${f.limit}.`,
  'no-administrator': (f) => `${f.path}: with ${f.value} nobody could administer this ledger; ${f.limit}.`,
  'sign-in-wrong': (f) => `${f.path}: this is not the passphrase of ${f.value}; ${f.limit}.`,
  'sign-in-delayed': (f) => `${f.path}: too many wrong passphrases of ${f.value} in a row; ${f.limit}.`,
  // void and replace
  'reason-missing': (f) => `${f.path}: a reason is needed: ${f.limit}.`,
  'ticket-already-voided': (f) => `${f.path}: ticket ${f.value} is already voided (${f.limit}).`,
  'movement-already-voided': (f) => `${f.path}: the stock movement of entry ${f.value} is already void (${f.limit}).`,
  'replacement-elsewhere': (f) => `${f.path}: ticket ${f.value} cannot be replaced by this one; ${f.limit}.`,
  'ticket-not-voided': (f) => `${f.path}: ticket ${f.value} is not voided; ${f.limit}.`,
  'ticket-already-replaced': (f) => `${f.path}: ticket ${f.value} is already replaced by ${f.limit}.`,
  // signing
  'signers-not-two': (f) => `${f.path}: a ticket is signed by two different identities, ${f.limit}; given: ${f.value}.`,
  'parties-not-two': (f) => `${f.path}: ${f.value} stands on both sides of the transfer; choose ${f.limit}.`,
  'signer-not-entitled': (f) => `${f.path}: ${f.value} cannot sign like this; ${f.limit}.`,
  'passphrase-wrong': (f) => `${f.path}: the passphrase does not open the key of ${f.value}; ${f.limit}.`,
  'passphrase-too-short': (f) => `${f.path}: a passphrase of ${f.value} characters is too short; ${f.limit}.`,
  'identity-file-unreadable': (f) => `${f.path}: ${f.value} gives no signing identity: ${f.limit}.`,
  'certificate-not-valid': (f) => `${f.path}: the certificate of ${f.value} is not valid at this time (${f.limit}).`,
  // ledger and documents
  'ledger-damaged': (f) => `${f.path}: ${f.value}; ${f.limit}.`,
  'backup-not-whole': (f) => `${f.path}: ${f.value} cannot be used: ${f.limit}.`,
  'ledger-line': (f) => `${f.path}: ${f.value}; ${f.limit}.`,
  'path-not-allowed': (f) => `${f.path}: “${f.value}” cannot be used: ${f.limit}.`,
  'path-taken': (f) => `${f.path}: there is something at “${f.value}” already, and nothing is ever written over; ${f.limit}.`,
  'folder-not-usable': (f) => `${f.path}: the folder “${f.value}” cannot be used: ${f.limit}.`,
  'document-unreadable': (f) => `${f.path}: ${f.value} is not a ticket document: ${f.limit}.`,
  // reconciliation
  'period-backwards': (f) => `${f.path}: the period ends (${f.value}) before it begins (${f.limit}).`,
  'period-gap': (f) => `${f.path}: a period cannot begin at ${f.value}: ${f.limit}; periods neither overlap nor leave a gap.`,
  'period-closed': (f) => `${f.path}: ${f.value} lies in a closed period. ${f.limit}.`,
  'period-not-open': (f) => `${f.path}: no open period holds ${f.value}: ${f.limit}.`,
  'unknown-period': (f) => `${f.path}: there is no period “${f.value}”. On record: ${f.limit}.`,
  'check-not-signed-off': (f) => `${f.path}: “${f.value}” does not hold: ${f.limit}.`,
  'inventory-missing': (f) => `${f.path}: no measured inventory of ${f.value}; ${f.limit}.`,
} as const satisfies Record<string, Sentence>

export type FindingCode = keyof typeof SENTENCES

export const FINDING_CODES = Object.keys(SENTENCES) as readonly FindingCode[]

/** The sentence for a finding: what, where, and how to mend it. */
export function wording(finding: Told & { readonly code: FindingCode }): string {
  return SENTENCES[finding.code](finding)
}
