/**
 * Signing: identities, their keys under a passphrase, and signatures on documents.
 * In: people, passphrases, PDFs. Out: identities, signed PDFs, what a check of the signatures found. EN-319-142-1.
 */
export { fingerprint } from './certificate.ts'
export { readTextSignature, signText } from './detached.ts'
export { createIdentity, type NewIdentity, type ProtectedIdentity } from './identity.ts'
export { makeKeyRing, type KeyRing } from './key-ring.ts'
export { objectOf, openPdf, valueAt, type PdfFile, type PdfObject } from './pdf-file.ts'
export { PdfUnreadable, type PdfValue } from './pdf-objects.ts'
export { signDocument, SIGNING_REASONS, type SignAs } from './pdf-signature.ts'
export { importIdentity, type ImportedIdentity } from './pkcs12.ts'
export { PASSPHRASE_COST } from './derive.ts'
export { checkPassphrase } from './vault.ts'
export { passphraseFits, verifierOf } from './verifier.ts'
export { LARGEST_DOCUMENT, readSignatures, type SignatureReading, type SignaturesReading } from './verify.ts'
