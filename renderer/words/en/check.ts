export const check = {
  title: 'Check a document', choose: 'Choose PDF …', hint: 'or drop a ticket document here', says: 'Reads the signatures and the data inside the PDF and works every number out again. Nothing is stored, nothing leaves this machine. Whether a certificate belongs to the person it names is for you to settle: compare its fingerprint with the one that person gave you.',
  valid: (number: string): string => `${number} holds: every check below came out.`, invalid: (number: string): string => `${number === '' ? 'This document' : number} does not hold. Do not rely on it.`,
  checks: 'Checks', signatures: 'Signatures', columns: { result: 'Result', check: 'Check', detail: 'Detail', name: 'Signed by', party: 'Party', at: 'Signed at', certificate: 'Certificate (SHA-256)' },
  holds: 'holds', fails: 'does not hold', noSignatures: 'It carries no signature.', position: 'Place in the ledger', open: 'Open in register',
} as const
