export const ledger = {
  title: 'Ledger', verify: 'Check the ledger', cancel: 'Cancel', asking: 'Reading the ledger …', entries: 'Entries', more: 'Show older', empty: 'The ledger has no entries yet.',
  columns: { seq: 'Entry', kind: 'Kind', at: 'Posted', by: 'By', summary: 'What', hash: 'Hash' },
  kinds: {
    'terminal-set': 'terminal', 'tank-set': 'tank', 'product-set': 'product', 'party-set': 'party', 'identity-set': 'identity', 'limit-set': 'limit',
    'inventory-measured': 'inventory', 'gauge-verified': 'gauge verified', 'ticket-posted': 'ticket', 'ticket-voided': 'void', 'adjustment-posted': 'adjustment', 'probe-zeroed': 'probe zero',
  },
  whole: (entries: number, tickets: number): string => `The ledger is whole: ${entries} entries in one chain, ${tickets} tickets without gaps, every document and every list agrees with them.`,
  damaged: (count: number): string => (count === 1 ? 'The ledger is damaged: 1 difference was found. Stop posting and go back to a backup.' : `The ledger is damaged: ${count} differences were found. Stop posting and go back to a backup.`),
  headIs: (head: string): string => `Head ${head}`, differences: 'Differences', where: 'Where', what: 'What',
  progress: (what: string, done: number, of: number): string => `${what}: ${done} of ${of}`, starting: 'Starting …', cancelled: 'The check was cancelled; nothing is known yet.',
  about: 'This software', aboutOpen: 'About this software …', version: 'Version', core: 'SHA-256 of the core', sources: 'Standards and papers it follows',
} as const
