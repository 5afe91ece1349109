export const people = {
  title: 'People', parties: 'Parties', identities: 'Signing identities', newParty: 'New party …', create: 'Create identity …', import: 'Import PKCS #12 …',
  columns: { code: 'Code', name: 'Name', address: 'Address', id: 'Id', party: 'Party', valid: 'Certificate valid', key: 'Key', fingerprint: 'Fingerprint (SHA-256 of the certificate)' },
  noParties: 'No parties on record.', noIdentities: 'Nobody can sign yet. Create an identity or import one.',
  valid: (from: string, to: string): string => `${from} to ${to}`, hasKey: 'on this machine', noKey: 'elsewhere',
  party: { newTitle: 'New party', title: (code: string): string => `Party ${code}`, code: 'Code', name: 'Name', address: 'Address (optional)', from: 'In force from (left empty: from now on)', by: 'Entered by', submit: 'Enter' },
  identity: {
    createTitle: 'Create signing identity', createSays: 'Makes a certificate and a private key on this machine. The key is kept encrypted under the passphrase, which is kept nowhere: who forgets it needs a new identity.',
    importTitle: 'Import signing identity', importSays: 'Takes certificate and private key from a PKCS #12 file (.p12, .pfx). Here the key is kept under a passphrase of its own.',
    id: 'Id', idHint: 'first-last, lower case', name: 'Name', party: 'Party', choose: 'choose …', file: 'PKCS #12 file', fileChoose: 'Choose file …', fileHint: 'or drop it here', filePassphrase: 'Passphrase of the file', passphrase: 'Passphrase', again: 'The same again',
    differ: 'The two passphrases differ.', by: 'Entered by', create: 'Create', import: 'Import', chosen: (name: string): string => `Chosen: ${name}`,
  },
} as const
