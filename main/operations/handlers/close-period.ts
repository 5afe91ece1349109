import { canonicalJson, instantKey, sha256Hex, type ClosingCheck, type Seal, type SealSignature } from '../../../core/ledger/index.ts'
import { closingChecks as checksOf, mayBeSignedOff } from '../../../core/reconciliation/index.ts'
import { accepted, orRefuse, refused, type Finding, type Outcome } from '../../../core/refusal/index.ts'
import { signText } from '../../signing/index.ts'
import { atHeadOrAlone } from '../at-head.ts'
import { closingFacts, ledgerFact } from '../closing-facts.ts'
import type { Handler, LedgerContext, ParsedInput } from '../context.ts'
import { readRecord } from '../on-record.ts'
import { openIdentity } from '../open-identity.ts'
import { periodNamed, periodToClose } from '../period-on-record.ts'
import { post } from '../post.ts'
import { enteredBy } from '../who.ts'

type Input = ParsedInput<'close-period'>
type Found = Omit<ClosingCheck, 'signedOff'>
const clause = 'HOUSE periods'

export const closingChecks: Handler<'closing-checks'> = async ({ period: name }, { store, now }, call) => {
  const period = orRefuse(await periodNamed(store, name))
  const checks = checksOf(await closingFacts(store, period, await ledgerFact(store, call)))
  return { period: { name: period.name, from: period.from, to: period.to }, ended: instantKey(now()) >= instantKey(period.to), checks: checks.map((check) => ({ ...check, maySignOff: mayBeSignedOff(check) })) }
}

/** The ledger is checked once; everything else is looked at, sealed and signed for one head, and anew when another posting comes first. */
export const closePeriod: Handler<'close-period'> = async (input, context, call) => {
  const { now } = context
  const by = enteredBy(context, input.by)
  const step = (done: number, what: string): void => call.progress({ done, of: 3, what })
  orRefuse(await periodToClose(context.store, input.period, now()))
  // a trial is asked for a list, again and again; the ledger is checked when the period is closed
  const ledger = context.trial === true ? { whole: true, detail: 'checked when it is closed' } : await ledgerFact(context.store, call)
  return atHeadOrAlone(context.store, call.signal, async (head, store) => {
    step(0, 'checks')
    const at = now()
    const standing = orRefuse(await periodToClose(store, input.period, at))
    const period = { name: standing.name, from: standing.from, to: standing.to }
    const checks = orRefuse(signedOff(checksOf(await closingFacts(store, standing, ledger)), input.signOffs ?? [], by))
    step(1, 'seal')
    const seal: Seal = { schema: 'dipledger-seal-1', period, closedAt: at, closedBy: by, head: { seq: head.seq, hash: head.hash }, ...await store.sealFigures(standing), checks: [...checks] }
    const text = canonicalJson(seal)
    const signature = await signed(text, input, { ...context, store })
    call.signal.throwIfAborted()
    step(2, 'closing')
    const posted = await post(store, { kind: 'period-closed', at, by, body: { seal, signature } }, { expectedHead: head.hash })
    step(3, 'closed')
    return { ...posted, seal, sealHash: sha256Hex(text) }
  })
}

/** Every check that does not hold is signed off by itself, with a reason; what is signed off must not hold. */
function signedOff(checks: readonly Found[], signOffs: NonNullable<Input['signOffs']>, by: string): Outcome<readonly ClosingCheck[]> {
  const findings: Finding[] = signOffs.flatMap(({ check, reason }, i): Finding[] => {
    const found = checks.find((one) => one.check === check)
    if (found === undefined || found.holds) return [{ code: 'value-not-used', path: `signOffs.${i}.check`, value: check, limit: found === undefined ? 'there is no such check; closing-checks lists them' : 'it holds, and is not signed off', clause }]
    return reason.trim() === '' ? [{ code: 'reason-missing', path: `signOffs.${i}.reason`, value: reason, limit: `say why the period may be closed though “${check}” does not hold`, clause }] : []
  })
  for (const one of checks) {
    if (one.holds) continue
    if (!mayBeSignedOff(one)) findings.push({ code: 'check-not-signed-off', path: 'period', value: one.check, limit: `${plain(one.detail)}; close that one first, this is never signed off`, clause })
    else if (!signOffs.some(({ check }) => check === one.check)) findings.push({ code: 'check-not-signed-off', path: 'signOffs', value: one.check, limit: `${plain(one.detail)}; mend it, or sign it off with a reason`, clause })
  }
  if (findings.length > 0) return refused(...findings)
  return accepted(checks.map((one) => {
    const reason = one.holds ? undefined : signOffs.find(({ check }) => check === one.check)?.reason
    return reason === undefined ? one : { ...one, signedOff: { by, reason } }
  }))
}

/** A sentence that goes on. */
function plain(detail: string): string {
  return detail.replace(/\.$/, '')
}

/** Signed by the identity of whoever closes it; in a trial, which books nothing, nobody signs. */
async function signed(text: string, { identity: given, passphrase }: Input, context: LedgerContext): Promise<SealSignature> {
  if (context.trial === true) return { identity: given ?? '', certificate: '0'.repeat(64), cms: '' }
  const own = context.caller?.person.identity
  const id = orRefuse(signer(given, own))
  if (passphrase === undefined) orRefuse(missing('passphrase', `the passphrase of ${id}`))
  const { identity, key } = orRefuse(await openIdentity({ identity: id, passphrase: passphrase ?? '' }, { identity: 'identity', passphrase: 'passphrase' }, await readRecord(context.store), context))
  return { identity: identity.id, certificate: identity.fingerprint, cms: await signText(text, key, identity) }
}

function signer(given: string | undefined, own: string | undefined): Outcome<string> {
  if (given === undefined && own === undefined) return missing('identity', 'the signing identity of whoever closes the period')
  if (given !== undefined && own !== undefined && given !== own) return refused({ code: 'signer-not-entitled', path: 'identity', value: given, limit: `whoever is at the desk signs as ${own}`, clause })
  return accepted(given ?? own ?? '')
}

function missing(path: string, limit: string): Outcome<never> {
  return refused({ code: 'missing-value', path, value: '', limit, clause })
}
