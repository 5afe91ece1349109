import { canonicalJson, sealFileSchema, sha256Hex, type SealFile } from '../../../core/ledger/index.ts'
import { orRefuse, Refused, type Finding } from '../../../core/refusal/index.ts'
import { sealPdf } from '../../documents/seal.ts'
import { fingerprint } from '../../signing/index.ts'
import type { LedgerStore } from '../../store/index.ts'
import { heldCheck, ledgerChecks, listCheck, signatureChecks } from '../check-seal.ts'
import type { Handler } from '../context.ts'
import { identityOn, readRecord, terminalOn } from '../on-record.ts'
import { periodNamed } from '../period-on-record.ts'

export const verifySeal: Handler<'verify-seal'> = async ({ period, file, ...written }, { store }) => {
  const given = Object.keys(written).length > 0
  if ([period !== undefined, file !== undefined, given].filter(Boolean).length !== 1) throw new Refused([oneOfThree()])
  if (period !== undefined) return ofLedger(store, period)
  return ofFile(store, given ? sealOf(written, 'seal', JSON.stringify(written)) : sealIn(file ?? ''))
}

export const sealDocument: Handler<'seal-document'> = async ({ period: name, format }, { store, now, software }) => {
  const period = orRefuse(await periodNamed(store, name))
  const closing = await store.closing(period)
  if (closing === undefined) throw new Refused([notClosed(name)])
  const record = await readRecord(store)
  const identity = orRefuse(identityOn(record, closing.body.signature.identity, 'period'))
  const file: SealFile = { schema: 'dipledger-seal-file-1', ...closing.body, certificate: identity.certificate }
  const stem = `seal-${orRefuse(terminalOn(record, 'ledger', period.to)).code}-${name.replaceAll(' ', '-')}`
  if (format === 'json') return { name: `${stem}.json`, type: 'application/json', file: Buffer.from(canonicalJson(file), 'utf8').toString('base64') }
  const pdf = await sealPdf(file, { terminal: orRefuse(terminalOn(record, 'ledger', period.to)), signer: identity, entry: closing.seq, at: now(), software })
  return { name: `${stem}.pdf`, type: 'application/pdf', file: Buffer.from(pdf).toString('base64') }
}

async function ofLedger(store: LedgerStore | null, name: string) {
  if (store === null) throw new Refused([{ code: 'missing-value', path: 'ledger', value: '', limit: 'a seal is found by its period in an open ledger; give it as a file, or open one', clause: 'HOUSE periods' }])
  const period = orRefuse(await periodNamed(store, name))
  const closing = await store.closing(period)
  if (closing === undefined) throw new Refused([notClosed(name)])
  const { seal, signature } = closing.body
  return answer(seal, [...await signatureChecks(seal, signature), listCheck(seal), ...await ledgerChecks(store, period, closing)])
}

/** A file is checked by itself, and against the ledger that is open where that has a period of its name and ends. */
async function ofFile(store: LedgerStore | null, { seal, signature, certificate }: SealFile) {
  const own = fingerprint(Buffer.from(certificate, 'base64'))
  const checks = [...await signatureChecks(seal, signature), listCheck(seal), { check: 'The certificate beside it is that of the signature', holds: own === signature.certificate, detail: own }]
  const period = (await store?.periods())?.find(({ name, from, to }) => name === seal.period.name && from === seal.period.from && to === seal.period.to)
  if (store === null || period === undefined) return answer(seal, checks)
  const closing = await store.closing(period)
  return answer(seal, [...checks, heldCheck(seal, closing), ...closing === undefined ? [] : await ledgerChecks(store, period, closing)])
}

function answer(seal: SealFile['seal'], checks: readonly { readonly check: string; readonly holds: boolean; readonly detail: string }[]) {
  return { valid: checks.every(({ holds }) => holds), period: seal.period.name, sealHash: sha256Hex(canonicalJson(seal)), checks: [...checks] }
}

function sealIn(file: string): SealFile {
  const text = Buffer.from(file, 'base64').toString('utf8')
  return sealOf(parsed(text), 'file', text)
}

function sealOf(value: unknown, path: string, text: string): SealFile {
  const read = sealFileSchema.safeParse(value)
  if (read.success) return read.data
  throw new Refused([{ code: 'unreadable-value', path, value: `${text.slice(0, 40)}…`, limit: 'a seal as seal-document writes it, dipledger-seal-file-1', clause: 'HOUSE periods' }])
}

/** What is no JSON is no seal either. */
function parsed(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch {
    return undefined
  }
}

function oneOfThree(): Finding {
  return { code: 'missing-value', path: 'period', value: '', limit: 'give one thing: the name of a period, or a seal, as it is or as a file', clause: 'HOUSE periods' }
}

function notClosed(name: string): Finding {
  return { code: 'out-of-range', path: 'period', value: `${name}, which is open`, limit: 'a closed period; only that has a seal', clause: 'HOUSE periods' }
}
