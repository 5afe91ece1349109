import { orRefuse } from '../../../core/refusal/index.ts'
import { correctVolume } from '../../../core/volume-correction/index.ts'
import type { Handler } from '../context.ts'

/** CTL, CPL, CTPL and base density with their worksheet; more of it when details are asked for. */
export const volumeCorrection: Handler<'volume-correction'> = async ({ details, ...input }) => {
  const { observed, densityAtConditions, standard, ...documented } = orRefuse(correctVolume(input))
  return details === true ? { ...documented, observed, densityAtConditions, standard } : documented
}
