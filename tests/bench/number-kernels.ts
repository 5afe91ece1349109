import { searchBaseDensity } from '../../core/volume-correction/index.ts'
import { lightCtl, searchRelativeDensity } from '../../core/volume-correction/lpg-ctl.ts'
import { pressureEffect } from '../../core/volume-correction/lpg-pressure.ts'
import { rateOf, type Rate } from './families.ts'

/** How often a second the number kernels beside that of 11.1 run. */
export function numberRates(): readonly Rate[] {
  let i = 0
  const next = (): number => { i = (i + 1) % 1000; return i / 1000 }
  return [
    { name: '11.1 refined', what: 'observed to base density', perSecond: rateOf(() => searchBaseDensity({ commodity: 'refined', alpha60: null }, 700 + 150 * next(), 40 + 80 * next(), 0)) },
    { name: '11.2.4', what: 'CTL', perSecond: rateOf(() => lightCtl(0.5 + 0.1 * next(), 100 * next())) },
    { name: '11.2.4', what: 'observed to base density', perSecond: rateOf(() => searchRelativeDensity(0.5 + 0.1 * next(), 100 * next())) },
    { name: '11.2.2', what: 'CPL with vapour pressure', perSecond: rateOf(() => pressureEffect(0.5 + 0.1 * next(), 100 * next(), 500)) },
  ]
}
