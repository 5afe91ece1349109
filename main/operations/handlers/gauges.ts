import { verifyGauge as compute } from '../../../core/gauge/index.ts'
import { accepted, andThen, orRefuse } from '../../../core/refusal/index.ts'
import type { Handler } from '../context.ts'
import { instrumentInForce, readRecord, tankInForce } from '../on-record.ts'
import { post } from '../post.ts'
import { notInFuture } from '../times.ts'
import { enteredBy } from '../who.ts'

export const verifyGauge: Handler<'verify-gauge'> = async ({ tank, verification }) => orRefuse(compute(verification, tank))

export const recordGaugeVerification: Handler<'record-gauge-verification'> = async ({ verification, by }, context) => {
  const { store, now } = context
  const at = orRefuse(notInFuture(verification.at, now(), 'verification.at')).text
  const inForce = tankInForce(await readRecord(store), verification.tank, at, 'verification.tank')
  const found = orRefuse(andThen(inForce, (tank) => andThen(compute(verification, tank.value), (result) => accepted({ tank, result }))))
  const instrument = instrumentInForce(await store.entriesOfKind('instrument-set'), verification.gauge, verification.tank, at)
  const posted = await post(store, {
    kind: 'gauge-verified', at: now(), by: enteredBy(context, by),
    body: { verification, result: found.result, tank: found.tank.version, ...(instrument !== undefined && { instrument }) },
  })
  return { ...posted, result: found.result }
}
