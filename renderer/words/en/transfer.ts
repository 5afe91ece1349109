export const transfer = {
  title: 'Transfer', kinds: { receipt: 'Receipt', delivery: 'Delivery' }, columns: { moved: 'Moved' },
  fields: {
    kind: 'Kind', tank: 'Tank', product: 'Product', from: 'From', to: 'To', reference: 'Reference', remarks: 'Remarks on the ticket',
    'lineFill.opening.volume': 'Opening: line fill', 'lineFill.opening.temperature': 'Opening: line-fill temperature',
    'lineFill.line': 'Line by its code', 'lineFill.closing.volume': 'Closing: line fill', 'lineFill.closing.temperature': 'Closing: line-fill temperature',
  },
  choose: 'choose …', lineFill: 'Line fill', lineFillAt: '… at', lineName: '… booked on', lineNameHint: 'JETTY-1', addLineFill: 'Add line fill', dropLineFill: 'Leave line fill out',
  moved: { nsv: 'Net standard volume', gsv: 'Gross standard', mass: 'Mass in vacuum', weight: 'Weight in air', water: 'Free water' },
  movedTitle: { receipt: 'Received', delivery: 'Delivered' }, notYet: 'Fill in both gauges to see what was moved.', oneGauge: 'One gauge is computed so far.', bothGauges: 'Both gauges are computed, but not what was moved: see below.',
  exceptions: 'To be printed on the ticket', needs: 'Still needed', mend: (count: number): string => (count === 1 ? '1 thing to mend' : `${count} things to mend`),
  allThere: 'Nothing is missing; ready to sign.', sheetLabel: 'Gauge sheet', worksheetLabel: 'Worksheet', pictureLabel: 'Tank', checksLabel: 'What is missing or wrong',
  more: (count: number): string => `and ${count} more`,
  sign: 'Sign and book', undo: 'Undo', redo: 'Redo', discard: 'Discard', discardSure: 'Discard for good?', drafts: (count: number): string => `Drafts (${count})`,
  kept: { idle: 'Draft is kept as you type', saving: 'Keeping …', saved: (at: string): string => `Draft kept ${at}`, here: 'Kept in this window until the ledger answers', failed: 'Draft could not be kept' },
  replaces: (number: string): string => `replaces ${number}`,
  start: {
    title: 'Start', tank: 'Tank', drafts: 'Drafts', receipt: 'New receipt', delivery: 'New delivery', inventory: 'Record an inventory', probe: 'Hydrostatic probe', log: 'From a gauge log', noDrafts: 'No drafts.', begun: 'Begin on',
    kind: 'Kind', what: 'Draft', savedAt: 'Kept', discard: 'Discard', open: 'Open', kinds: { transfer: 'Transfer', inventory: 'Inventory', probe: 'Probe reading', verification: 'Verification', stock: 'Stock movement' }, noTank: 'Choose a tank, here or at the left.',
    untitled: 'nothing chosen yet', last: (what: string, at: string): string => `Last gauged ${at}, ${what}`, never: 'Never gauged', newOne: 'Start another',
  },
  draftGone: 'This draft is no longer there. It was booked or discarded.', draftUnreadable: 'This draft was kept by another version of Dipledger and cannot be opened here.', backToStart: 'To the start',
  replacing: (number: string): string => `Copying the gauges of ${number} …`, tankGone: (tank: string): string => `There is no tank ${tank} on record.`,
  signing: {
    title: 'Sign and book', first: 'First signature', second: 'Second signature', identity: 'Who signs', role: 'Signs as', passphrase: 'Passphrase of the key',
    roles: { terminal: 'Terminal', counterparty: 'Counterparty', inspector: 'Inspector' }, choose: 'choose …', noKey: 'key is not on this machine', book: 'Sign and book',
    nobody: 'No one can sign yet: make signing identities under People.', says: (number: string): string => `Takes the next number (${number}), is signed twice and booked: all of it or nothing.`, working: 'Signing and booking …', onSheet: 'On the sheet', number: 'First', close: 'Back to the sheet',
  },
  booked: {
    title: (number: string): string => `${number} is booked`, save: 'Save PDF', register: 'Open in register', another: 'Start another', entry: 'Ledger entry', hash: 'Hash of the entry', document: 'SHA-256 of the PDF',
    saved: 'The PDF went to your downloads.', issued: 'Issued', signers: 'Signed by',
  },
} as const
