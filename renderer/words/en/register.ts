export const register = {
  title: 'Register',
  filter: {
    label: 'Filter', search: 'Search', searchHint: 'number, party, reference', tank: 'Tank', product: 'Product', from: 'Closed from', to: 'Closed to', dayHint: '2026-03-14', all: 'all', clear: 'Clear',
    wrongDay: (name: string): string => `${name}: write the day as 2026-03-14.`,
  },
  columns: { number: 'Ticket', closed: 'Closed', kind: 'Kind', tank: 'Tank', product: 'Product', from: 'From', to: 'To', nsv: 'NSV', weight: 'Weight in air', unit: 'Unit', state: 'State' },
  kinds: { receipt: 'receipt', delivery: 'delivery' },
  voided: (reason: string): string => `void: ${reason}`, replacedBy: 'replaced by', replaces: 'replaces',
  tickets: 'Tickets', empty: 'No tickets here. Book one in Transfer, or clear the filter.', shown: (count: number, more: boolean): string => (more ? `the newest ${count}` : count === 1 ? '1 ticket' : `${count} tickets`),
  more: 'Show more', csv: 'Save list as CSV', asking: 'Reading the register …',
  detail: {
    label: (number: string): string => `Ticket ${number}`, whole: (number: string): string => `${number} in full`, close: 'Close', savePdf: 'Save PDF', void: 'Void …', replace: 'Replace', saved: 'The PDF went to your downloads.',
    receipt: 'Received', delivery: 'Delivered', exceptions: 'Printed on the ticket', noExceptions: 'None.', signers: 'Signed by', place: 'Place in the ledger', gauges: 'Gauges as read', worksheet: 'Worksheet',
    quantities: { nsv: 'Net standard volume', gsv: 'Gross standard volume', mass: 'Mass in vacuum', weight: 'Weight in air', water: 'Free water' },
    from: 'From', to: 'To', opened: 'Opening gauge', closed: 'Closing gauge', issued: 'Issued', reference: 'Reference', remarks: 'Remarks', product: 'Product', tank: 'Tank',
    entry: 'Entry', hash: 'Hash of the entry', document: 'SHA-256 of the PDF', before: 'Ledger before it', versions: 'Computed with', software: 'Software',
    version: (code: string, seq: number): string => `${code} as set by entry ${seq}`, head: (seq: number, head: string): string => `entry ${seq}, head ${head}`,
    roles: { terminal: 'for the terminal', counterparty: 'for the counterparty', inspector: 'as inspector' }, certificate: 'certificate',
    columns: { opening: 'Opening', closing: 'Closing', moved: 'Moved' },
    voidedAt: (at: string, seq: number): string => `Void since ${at}, entry ${seq}.`,
    readings: {
      at: 'Time', by: 'Read by', innage: 'Innage', ullage: 'Ullage', observedReferenceHeight: 'Reference height seen', waterCut: 'Water cut', waterVolume: 'Water, entered', liquid: 'Liquid temperature', ambient: 'Ambient temperature',
      pressure: 'Pressure above', density: 'Density', densityTemperature: '… read at', densityPressure: '… under pressure', instrument: 'Density by', sedimentAndWater: 'Sediment and water', repeated: 'Repeated readings', tape: 'Tape', automatic: 'Level read by', spots: 'Temperature spots', samples: 'Samples', pressures: 'Pressures beside the level', remarks: 'Remarks',
    },
    instruments: { hydrometer: 'hydrometer', 'density-meter': 'density meter', base: 'base density given', probe: 'hydrostatic probe' },
  },
  voiding: {
    title: (number: string): string => `Void ${number}`, says: 'The ticket stays as it is and is struck through. Its volume leaves the book with a new entry that gives your reason. This cannot be undone; a right ticket replaces it.',
    reason: 'Reason', by: 'Voided by', submit: 'Void the ticket',
  },
  keys: { search: 'Search the register', save: 'Save the PDF', close: 'Close the ticket' },
} as const
