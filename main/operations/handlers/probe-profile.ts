import { probeProfile as profile } from '../../../core/gauge/index.ts'
import { orRefuse } from '../../../core/refusal/index.ts'
import type { Handler } from '../context.ts'

export const probeProfile: Handler<'probe-profile'> = async (input) => orRefuse(profile(input))
