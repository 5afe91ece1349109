import { z } from 'zod'
import type { Finding } from '../refusal/index.ts'

/** What an automatic level gauge said of itself with its reading. */
export const GAUGE_STATUSES = ['ok', 'disturbed', 'alarm', 'out-of-service'] as const

/** An automatic level gauge that read level, and temperature if it can. */
const automaticSchema = z.strictObject({
  kind: z.literal('automatic'),
  /** Name of the gauge on the tank: `LT-101`. */
  id: z.string().min(1).max(40),
  status: z.enum(GAUGE_STATUSES),
})

export const instrumentSchema = z.discriminatedUnion('kind', [automaticSchema])
export type Instrument = Readonly<z.infer<typeof instrumentSchema>>

/**
 * What the status of an instrument says of its reading: `gauge-out-of-order` refuses, `gauge-disturbed` is an exception.
 * @param instrument as written
 * @param path of the instrument, for the findings
 * @source MPMS-3.1B status of an automatic gauge
 */
export function judgeStatus({ id, status }: Instrument, path: string): { readonly refusals: readonly Finding[]; readonly exceptions: readonly Finding[] } {
  const finding = (code: 'gauge-out-of-order' | 'gauge-disturbed', limit: string): Finding => ({ code, path: `${path}.status`, value: `${id}: ${status}`, limit, clause: 'MPMS-3.1B status of an automatic gauge' })
  switch (status) {
    case 'ok': return { refusals: [], exceptions: [] }
    case 'disturbed': return { refusals: [], exceptions: [finding('gauge-disturbed', 'status ok')] }
    case 'alarm':
    case 'out-of-service': return { refusals: [finding('gauge-out-of-order', 'gauge by hand')], exceptions: [] }
  }
}
