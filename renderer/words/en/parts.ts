export const parts = {
  fault: 'This could not be done.',
  tryAgain: 'Try again',
  working: 'Working …',
  cancel: 'Cancel',
  step: (what: string, done: number, of: number): string => (of > 0 ? `${what}: ${done} of ${of}` : what),
  worksheet: {
    label: 'Worksheet', main: 'Main lines only', every: (count: number): string => `Every line (${count})`,
    symbol: 'Symbol', name: 'Quantity', opening: 'Opening', closing: 'Closing', moved: 'Moved', value: 'Value',
    formula: 'Formula', from: 'From', unrounded: 'Before rounding', rounding: 'Rounding', clause: 'Clause', notes: 'Note',
    asWritten: 'as it was written', unfold: 'Enter or click a line to see how it was computed', exceptions: 'To be printed on the ticket',
  },
} as const
