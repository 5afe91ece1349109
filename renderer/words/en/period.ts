export const period = {
  title: 'Periods', back: 'Back to the month', toPeriodsKey: 'Periods of this ledger',
  says: 'Nothing is closed until the first period is opened. From then on whatever is booked must lie in an open period; a closed one takes nothing any more, and what concerns it is booked late, in an open one.',
  table: 'All periods', none: 'No period was opened yet.',
  columns: { name: 'Period', from: 'After', to: 'Up to', standing: 'Standing' },
  open: 'open', closed: 'closed', exceptions: (count: number): string => (count === 0 ? '' : count === 1 ? ', 1 exception' : `, ${count} exceptions`),
  opening: {
    button: 'Open period …', title: 'Open a period', submit: 'Open the period', first: 'The first period may begin at any time; each next one begins where the one before ends.', next: 'It begins where the last one ends.',
    name: 'Name', from: 'After', to: 'Up to and with', by: 'Opened by', done: (name: string): string => `Period ${name} is open.`,
  },
  detail: {
    label: (name: string): string => `Period ${name}`, close: 'Back to the list', toReport: 'Book against measured', ends: (from: string, to: string): string => `after ${from}, up to ${to}`,
    closedBy: (by: string, at: string): string => `Closed by ${by} on ${at}, `, entry: (seq: number): string => `entry ${seq}`,
  },
  checks: {
    title: 'Checks before closing', run: 'Look again', looking: 'Looking …', holds: 'holds', fails: 'does not hold', reason: (check: string): string => `Reason why the period may be closed though “${check}” does not hold`, reasonHint: 'reason for signing it off', never: 'mend this first; it is never signed off',
    allHold: 'Every check holds.', failing: (failing: number, signed: number): string => `${failing === 1 ? '1 check does' : `${failing} checks do`} not hold; ${signed === failing ? 'a reason stands beside each.' : `${failing - signed} still ${failing - signed === 1 ? 'needs' : 'need'} a reason.`}`,
    notYet: (failing: number): string => `${failing === 1 ? '1 check does' : `${failing} checks do`} not hold yet.`, ended: (to: string): string => `It ends ${to} and can be closed from then on.`,
  },
  closing: {
    button: 'Close the period …', title: (name: string): string => `Close ${name}`, submit: 'Close and sign', says: 'A closed period takes no entry any more. Its seal holds the head of the ledger, counts and balances, and is signed. This cannot be undone.',
    signedOff: (count: number): string => (count === 0 ? 'Every check holds.' : count === 1 ? '1 check is signed off with its reason.' : `${count} checks are signed off, each with its reason.`),
    prepares: 'Somebody else approves it, and signs.', signOffsGiven: 'Does not hold, and the reason why it may be closed', identity: 'Signs as', choose: 'choose …', passphrase: 'Passphrase of the key', by: 'Closed by',
  },
  seal: {
    title: 'Seal', hash: 'SHA-256 of the seal', copy: 'Copy', copied: 'Copied', head: 'Head before it', headOf: (seq: number): string => `entry ${seq}`, signer: 'Signed by', certificate: 'Certificate', closed: 'Closed',
    counts: 'Counts', countsOf: (c: { readonly entries: number; readonly tickets: number; readonly voided: number; readonly inventories: number; readonly adjustments: number; readonly stockMovements: number; readonly lateCorrections: number }): string =>
      `${c.entries} entries since the seal before; ${c.tickets} tickets; ${c.inventories} inventories; ${c.adjustments} adjustments; ${c.stockMovements} stock movements; ${c.voided} void in all; ${c.lateCorrections} late corrections`,
    balances: 'Booked up to its end since the ledger began, net standard volume', owners: 'Owners at its end', code: 'Tank or line', product: 'Product', party: 'Party', nsv: 'NSV', unit: 'Unit', checks: 'Checks as they were', signedOffBy: (by: string, reason: string): string => `Signed off by ${by}: ${reason}`,
    json: 'Save as JSON', pdf: 'Save PDF', saved: 'The file went to your downloads.', verify: 'Verify', verifying: 'Working the seal out again …', valid: 'The seal holds: signature, head, counts and balances come out again from the entries.', invalid: 'The seal does not hold.',
  },
  late: {
    booked: 'Late corrections booked here', concerning: 'Later corrections that concern this period', none: 'None.', entry: 'Entry', what: 'What', where: 'Tank', product: 'Product', nsv: 'NSV', unit: 'Unit', bookedAt: 'Counts at', concerns: 'Concerns', corrects: 'Corrects',
    takenBack: 'taken back', movementTakenBack: 'stock movement taken back', correctsEntry: (seq: number): string => `entry ${seq}`,
    note: (name: string): string => `This concerns the closed period ${name}. The closed book stays as it is; a late correction counts in an open period, and both name each other.`,
    wanted: (name: string): string => `Post it as a late correction of ${name}`, at: (zone: string): string => `Counts at, ${zone}`, noneOpen: 'No period is open in which it could count. Open the next one under Month, Periods.', notOpen: 'This lies in no open period.',
    ofTicket: 'Late correction of the closed period', countsAt: (at: string): string => `; it counts at ${at}`, correctsTicket: '; it corrects', stands: 'It counts in a closed period and stands there;', takesBack: 'takes it back in an open one. Period:',
    later: 'Corrected later by', mark: (name: string): string => `late, ${name}`,
  },
  mark: { none: 'No period with these ends was opened: to the periods', closed: (name: string, hash: string): string => `Period ${name} is closed, seal ${hash.slice(0, 12)}…`, open: (name: string): string => `Period ${name} is open.` },
} as const
