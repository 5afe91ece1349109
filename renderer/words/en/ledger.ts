import { fields } from './fields.ts'

const CHECKED: Readonly<Record<string, string>> = {
  file: 'the file', schema: 'the schema', chain: 'the chain of hashes', entries: 'entries, each computed again', documents: 'documents, each opened and drawn again',
  ticket: 'the register', movement: 'movements', measurement: 'inventories', allocation: 'owners’ shares', period: 'periods', alarm: 'alarms', trail: 'the audit trail', trail_about: 'what entries are about', ticket_word: 'words of tickets',
}

export const ledger = {
  title: 'Ledger', verify: 'Check the ledger', cancel: 'Cancel', asking: 'Reading the ledger …', entries: 'Entries', more: 'Show older',
  empty: 'No entry is of this kind.', emptyTo: (seq: number): string => `Nothing found back to entry ${seq}; there is more further back.`,
  csv: 'Save as CSV', jsonLines: 'Save as JSON lines',
  columns: { seq: 'Entry', kind: 'What', at: 'When', by: 'Who', station: 'Station', about: 'About', summary: 'What it says' },
  kinds: {
    'terminal-set': 'terminal', 'tank-set': 'tank', 'product-set': 'product', 'party-set': 'party', 'identity-set': 'identity', 'limit-set': 'limit',
    'instrument-set': 'instrument', 'person-set': 'person', 'rules-set': 'desk rules', 'inventory-measured': 'inventory', 'gauge-verified': 'gauge verified',
    'ticket-posted': 'ticket', 'ticket-voided': 'void', 'adjustment-posted': 'adjustment', 'probe-zeroed': 'probe zero', 'stock-moved': 'stock movement', 'stock-voided': 'stock void', 'stock-allocated': 'owners',
    'period-opened': 'period opened', 'period-closed': 'period closed', 'gauge-event': 'gauge event', 'desk-event': 'desk',
  },
  groups: { 'set-up': 'Set-up', tickets: 'Tickets', stock: 'Stock', periods: 'Periods', gauges: 'Gauges verified and zeroed', alarms: 'Alarms and events of gauges', desk: 'Desk' },
  events: { alarm: 'Alarm', 'alarm-cleared': 'Alarm cleared', fault: 'Fault', 'fault-cleared': 'Fault cleared', 'setting-changed': 'Setting changed', note: 'Note' },
  filter: {
    label: 'Narrow the audit trail down', focus: 'Search the audit trail', words: 'Words', wordsHint: 'in what it says', group: 'Kind', all: 'all', subject: 'About', subjectHint: 'tank, ticket, person',
    person: 'Who', personHint: 'name', station: 'Station', stationHint: 'name', from: 'From day', to: 'To day', dayHint: 'YYYY-MM-DD', wrongDay: (label: string): string => `${label}: write a day as 2026-09-14`, clear: 'Clear',
  },
  entry: {
    title: (seq: number): string => `Entry ${seq}`, close: 'Close', kind: 'What', at: 'When', by: 'Who', from: 'Station', noOrigin: 'no station on record', prepared: 'Prepared by', about: 'About',
    hash: 'Hash', previous: 'Hash before', body: 'What was entered', moreParts: (count: number): string => `Show ${count} more`,
  },
  changes: {
    title: 'What changed', against: 'Against', entry: (seq: number): string => `entry ${seq}`, placed: (time: string, by: string): string => ` of ${time}, ${by}`, fields,
    first: 'Set for the first time; nothing stood before it.', none: 'No field differs.', field: 'Field', before: 'Before', after: 'After', nothing: 'nothing', corrects: 'Corrects',
    rows: ({ differ, before, after }: { readonly differ: number; readonly before: number; readonly after: number }): string => {
      const says = before === after ? `${differ} of ${after} rows ${differ === 1 ? 'differs' : 'differ'}` : `${differ} ${differ === 1 ? 'row differs' : 'rows differ'}; ${before} before, ${after} now`
      return differ === 1 ? says : `${says}; the first:`
    },
  },
  alarms: {
    title: 'Alarms that stand', enter: 'Enter an event …', none: 'No gauge has an alarm or a fault that stands.', clear: 'Clear …', noGauge: 'gauge',
    standing: (kind: string, gauge: string, tank: string): string => `${kind}: ${gauge} of ${tank}`, since: (time: string): string => `since ${time}`,
    inStrip: (count: number): string => (count === 1 ? '1 alarm stands' : `${count} alarms stand`),
  },
  event: {
    title: 'Event of a gauge', submit: 'Enter', tank: 'Tank', choose: 'choose', gauge: 'Gauge', gaugeHint: 'as its log names it', event: 'Event', time: 'Time (terminal clock)', timeHint: 'YYYY-MM-DD hh:mm', message: 'What it said', by: 'Entered by',
  },
  logEvents: {
    title: (count: number): string => (count === 1 ? 'The log tells of 1 alarm or fault' : `The log tells of ${count} alarms and faults`),
    line: (time: string, kind: string, gauge: string, tank: string): string => `${time}  ${kind}: ${gauge === '' ? 'gauge' : gauge} of ${tank}`,
    by: 'Entered by', record: (count: number): string => `Enter ${count} in the ledger`,
    recorded: (count: number, known: number): string => `${count} entered${known > 0 ? `; ${known} were on record already` : ''}.`,
  },
  whole: (entries: number, tickets: number, recomputed: number): string => `The ledger is whole: ${entries} entries in one chain, ${tickets} tickets without gaps; ${recomputed} entries were computed again from the ledger alone, and every list agrees.`,
  documentsWhole: (count: number): string => `${count} documents were opened: signatures, data and pages are those that were signed and booked.`,
  openDocuments: (count: number): string => `Open all ${count} documents as well`,
  noticed: (count: number): string => (count === 1 ? '1 entry is worth a look' : `${count} entries are worth a look`),
  damaged: (count: number): string => (count === 1 ? 'The ledger is not as it was posted: 1 difference. Stop posting and go back to a backup.' : `The ledger is not as it was posted: ${count} differences. Stop posting and go back to a backup. The first:`),
  others: (count: number): string => (count === 1 ? '1 more' : `${count} more`),
  entriesInAll: (seq: number): string => (seq === 1 ? '1 entry' : `${seq} entries`), differences: 'Differences', where: 'Where', what: 'What',
  progress: (what: string, done: number, of: number): string => `${what}: ${done} of ${of}`,
  checking: (what: string, done: number, of: number): string => (of > 0 ? `Checking ${CHECKED[what] ?? what}: ${done} of ${of}` : `Checking ${CHECKED[what] ?? what}`),
  starting: 'Starting …', cancelled: 'The check was cancelled; nothing is known yet.',
  about: 'This software', aboutOpen: 'About this software …', version: 'Version', core: 'SHA-256 of the core', sources: 'Standards and papers it follows',
} as const
