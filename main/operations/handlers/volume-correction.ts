import { orRefuse } from '../../../core/refusal/index.ts'
import { correctVolume } from '../../../core/volume-correction/index.ts'
import type { Handler } from '../context.ts'

/** CTL, CPL, CTPL and base density with their worksheet. */
export const volumeCorrection: Handler<'volume-correction'> = async (input) => orRefuse(correctVolume(input))
