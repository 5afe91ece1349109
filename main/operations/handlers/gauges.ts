import { verifyGauge as compute, type VerificationResult } from '../../../core/gauge/index.ts'
import { allOf, orRefuse } from '../../../core/refusal/index.ts'
import type { Tank } from '../../../core/tank/index.ts'
import type { Handler } from '../context.ts'
import { readRecord, tankInForce, type InForce } from '../on-record.ts'
import { post } from '../post.ts'
import { notInFuture } from '../times.ts'

export const verifyGauge: Handler<'verify-gauge'> = async ({ tank, verification }) => orRefuse(compute(verification, tank))

export const recordGaugeVerification: Handler<'record-gauge-verification'> = async ({ verification, by }, { store, now }) => {
  const at = orRefuse(notInFuture(verification.at, now(), 'verification.at')).text
  const tank = tankInForce(await readRecord(store), verification.tank, at, 'verification.tank')
  const found = orRefuse(allOf<{ tank: InForce<Tank>; result: VerificationResult }>({ tank, result: tank.ok ? compute(verification, tank.value.value) : tank }))
  const posted = await post(store, { kind: 'gauge-verified', at: now(), by, body: { verification, result: found.result, tank: found.tank.version } })
  return { ...posted, result: found.result }
}
