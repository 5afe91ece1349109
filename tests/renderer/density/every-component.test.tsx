import { globSync } from 'node:fs'
import { join } from 'node:path'
import type { ReactNode } from 'react'
import { renderToString } from 'react-dom/server'
import { describe, expect, it } from 'vitest'
import { Surroundings } from '../../../renderer/app/App.tsx'
import type { Route } from '../../../renderer/app/route.ts'
import { TerminalContext } from '../../../renderer/app/TerminalContext.tsx'
import type { Bridge } from '../../../renderer/bridge/bridge.ts'
import { Bench, BenchHead } from '../../../renderer/density/Bench.tsx'
import { BenchLines } from '../../../renderer/density/BenchLines.tsx'
import { BlendBench, BlendHead } from '../../../renderer/density/BlendBench.tsx'
import { computeBlend, EMPTY_BLEND, withBatch } from '../../../renderer/density/blend-form.ts'
import { ConversionBench, ConversionHead } from '../../../renderer/density/ConversionBench.tsx'
import { computeConversion, EMPTY_CONVERSION } from '../../../renderer/density/conversion-form.ts'
import { CorrectionBench, CorrectionHead } from '../../../renderer/density/CorrectionBench.tsx'
import { computeCorrection, EMPTY_CORRECTION } from '../../../renderer/density/correction-form.ts'
import { CurveFields } from '../../../renderer/density/CurveFields.tsx'
import { curveForm } from '../../../renderer/density/curve-form.ts'
import { DensityPage } from '../../../renderer/density/DensityPage.tsx'
import { EMPTY_LIQUID } from '../../../renderer/density/liquid-form.ts'
import { chosen, EMPTY_SETTINGS } from '../../../renderer/density/liquid-settings.ts'
import { LiquidFields } from '../../../renderer/density/LiquidFields.tsx'
import { MassBench, MassTable } from '../../../renderer/density/MassBench.tsx'
import { computeMass, EMPTY_MASS } from '../../../renderer/density/mass-form.ts'
import { SettingFields } from '../../../renderer/density/SettingFields.tsx'
import { WaterBench, WaterHead } from '../../../renderer/density/WaterBench.tsx'
import { computeWater, EMPTY_WATER } from '../../../renderer/density/water-form.ts'
import { LIQUIDS } from '../../support/commodities.ts'
import { aTerminalNow } from '../a-yard.ts'

const nothing = (): void => undefined
const silent: Bridge = { call: () => new Promise(() => undefined) }
const now = aTerminalNow()
const none = new Map<string, string>()
const at = (bench: string): Route => ({ job: 'density', rest: [bench], query: {} })
const liquid = { ...EMPTY_LIQUID, density: '845.3', instrument: 'hydrometer', densityTemperature: '18.5' } as const
const correction = computeCorrection(liquid, { ...EMPTY_CORRECTION, temperature: '20' }).value!
const blend = computeBlend(withBatch(withBatch(EMPTY_BLEND, 0, { density: '800', amount: '1000' }), 1, { density: '900', amount: '900 t' })).value!

/** Every exported component, and something that must be readable in it. */
const COMPONENTS: Readonly<Record<string, readonly [ReactNode, string]>> = {
  DensityPage: [<DensityPage route={at('mass')} />, 'Weight in air by'],
  'DensityPage, no bench of that name': [<DensityPage route={at('nowhere')} />, 'Volume correction'],
  Bench: [<Bench first="a" form={{}} empty={{}} onForm={nothing} findings={[{ field: 'a', message: 'Density is too high.', clause: 'HOUSE' }]} missing={[]} nameOf={(id) => id} fields={(errors) => errors.get('a')} head={null} lines={[]} />, 'Density is too high.'],
  BenchHead: [<BenchHead title="CTPL" figure="0.98713" rest={[['CTL', '0.98713']]} by="By the standard" />, 'By the standard'],
  BenchLines: [<BenchLines lines={correction.worksheet} />, 'CTL × CPL'],
  CorrectionBench: [<CorrectionBench />, 'Fill in the sheet'],
  CorrectionHead: [<CorrectionHead output={correction} />, 'CTPL where read'],
  ConversionBench: [<ConversionBench />, 'Fill in the sheet'],
  ConversionHead: [<ConversionHead output={computeConversion(liquid, EMPTY_CONVERSION).value!} />, 'Relative density 60/60'],
  BlendBench: [<BlendBench />, 'Add batch'],
  BlendHead: [<BlendHead output={blend} />, 'Volumes are taken to add up.'],
  MassBench: [<MassBench />, 'Given is'],
  MassTable: [<MassTable output={computeMass({ ...EMPTY_MASS, density: '845.3', amount: '1000' }).value!} />, 'long ton'],
  WaterBench: [<WaterBench />, 'Reference temperature'],
  WaterHead: [<WaterHead output={computeWater({ ...EMPTY_WATER, temperature: '15', referenceTemperature: '20' }).value!} />, 'CTDW'],
  LiquidFields: [<LiquidFields form={liquid} errors={new Map([['liquid-density', 'Density is too high.']])} onForm={nothing} />, 'Density is too high.'],
  SettingFields: [<SettingFields ids="s" settings={chosen(EMPTY_SETTINGS, { commodity: 'chemical' })} errors={none} onChange={nothing} />, 'cyclohexane'],
  CurveFields: [<CurveFields ids="c" curve={curveForm(LIQUIDS.curve.curve)} base="15 degC" errors={none} onChange={nothing} />, '1022.0 kg/m3'],
}

function rendered(component: ReactNode): string {
  return renderToString(<Surroundings bridge={silent}><TerminalContext value={{ now, again: nothing }}>{component}</TerminalContext></Surroundings>)
}

describe('every component of the density job', () => {
  it.each(Object.entries(COMPONENTS))('%s renders', (_, [component, words]) => {
    expect(rendered(component).replaceAll('<!-- -->', '')).toContain(words)
  })

  it('stands in this list', async () => {
    const root = join(import.meta.dirname, '../../../renderer')
    const missing: string[] = []
    for (const file of globSync('density/*.tsx', { cwd: root })) {
      const module: Record<string, unknown> = await import(join(root, file))
      missing.push(...Object.entries(module).filter(([name, value]) => typeof value === 'function' && /^[A-Z][a-z]/.test(name) && !(name in COMPONENTS)).map(([name]) => `${file}: ${name}`))
    }
    expect(missing).toEqual([])
  })
})
