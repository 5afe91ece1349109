import type { ComponentType, ReactNode } from 'react'
import { useKey } from '../app/keys.tsx'
import { addressOf, goTo, type Route } from '../app/route.ts'
import { Page } from '../parts/Page.tsx'
import { words } from '../words/en.ts'
import { BlendBench } from './BlendBench.tsx'
import { ConversionBench } from './ConversionBench.tsx'
import { CorrectionBench } from './CorrectionBench.tsx'
import './density.css'
import { MassBench } from './MassBench.tsx'
import { WaterBench } from './WaterBench.tsx'

const BENCHES = { correction: CorrectionBench, conversion: ConversionBench, blend: BlendBench, mass: MassBench, water: WaterBench } as const satisfies Record<string, ComponentType>
type BenchName = keyof typeof BENCHES
const NAMES = Object.keys(BENCHES) as readonly BenchName[]

/** `#/density/correction` · `/conversion` · `/blend` · `/mass` · `/water`: the conversions of every day. Nothing here is booked. */
export function DensityPage({ route }: { readonly route: Route }): ReactNode {
  const t = words.density
  const here = NAMES.find((name) => name === route.rest[0]) ?? 'correction'
  const Shown = BENCHES[here]
  const go = (step: number): void => goTo(addressOf('density', [NAMES[(NAMES.indexOf(here) + step + NAMES.length) % NAMES.length] ?? here]))
  useKey('alt+pagedown', t.next, () => go(1), { group: t.title })
  useKey('alt+pageup', t.previous, () => go(-1), { group: t.title })
  return (
    <Page title={t.title} about={
      <nav aria-label={t.partsLabel} className="bench-parts">
        {NAMES.map((name) => <a key={name} href={addressOf('density', [name])} aria-current={name === here ? 'page' : undefined}>{t.parts[name]}</a>)}
      </nav>
    }>
      <Shown key={here} />
    </Page>
  )
}
