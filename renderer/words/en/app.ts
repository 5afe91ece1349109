export const app = {
  name: 'Dipledger',
  jobs: {
    transfer: 'Transfer', register: 'Register', month: 'Month', yard: 'Yard', people: 'People', check: 'Check a document', ledger: 'Ledger', density: 'Density', storage: 'Storage', stock: 'Stock',
  },
  jobsLabel: 'Jobs', yardStrip: 'Tanks', nextTicket: 'Next ticket', head: 'Ledger head', sideFoot: 'Ledger and desk', entry: (seq: number): string => `entry ${seq}`,
  noTerminal: 'No terminal yet', notGauged: 'not gauged', keysTitle: 'Keys', keysHint: '? keys', everywhere: 'Everywhere',
  goTo: (job: string): string => `Go to ${job}`, showKeys: 'Show this list', closes: 'Close what lies on top', nextField: 'Next field of a sheet',
  loading: 'Opening the ledger …',
  reach: {
    typed: 'What you type meanwhile is kept in this window.',
    saved: (titles: string): string => `What was kept in this window is saved now: ${titles}.`, seen: 'Seen',
  },
  emptyYard: 'No tanks on record. Enter them in Yard.',
} as const
