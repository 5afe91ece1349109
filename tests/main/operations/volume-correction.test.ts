import { describe, expect, it } from 'vitest'
import { openContext } from '../../../main/shells/open-context.ts'
import { callOperation } from '../../../main/operations/call-operation.ts'
import type { InputOf } from '../../../main/operations/contracts/index.ts'

const FIELDS = ['baseDensity', 'ctl', 'cpl', 'ctpl', 'unrounded', 'subgroup', 'worksheet']

async function correction(input: InputOf<'volume-correction'>) {
  const answer = await callOperation('volume-correction', input, await openContext(null, () => undefined), { progress: () => undefined, signal: new AbortController().signal })
  if (!('result' in answer)) throw new Error(JSON.stringify(answer))
  return answer.result
}

/** The three inputs that others call it with, as they are documented. */
const DOCUMENTED: readonly InputOf<'volume-correction'>[] = [
  { commodity: 'crude', density: { value: '31.4 degAPI' }, baseTemperature: '60 degF', temperature: '88.3 degF', pressure: '0 psi' },
  { commodity: 'refined', density: { value: '835.2 kg/m3', temperature: '27.5 degC', pressure: '0 kPa', hydrometer: true }, baseTemperature: '15 degC', temperature: '31.25 degC', pressure: '350 kPa' },
  { commodity: 'special', alpha: '0.000510 /degF', density: { value: '780 kg/m3' }, baseTemperature: '60 degF', temperature: '80 degF' },
]

describe('volume-correction', () => {
  it.each(DOCUMENTED)('answers $commodity with the documented fields and no others', async (input) => {
    expect(Object.keys(await correction(input)).sort()).toEqual([...FIELDS].sort())
  })

  it('of 31.4 °API at 88.3 °F has the factors that the documentation shows', async () => {
    expect(await correction(DOCUMENTED[0]!)).toMatchObject({ ctl: '0.98713', cpl: '1.00000', ctpl: '0.98713', subgroup: 'crude' })
  })

  it('says more when details are asked for', async () => {
    expect(Object.keys(await correction({ ...DOCUMENTED[0]!, details: true })).sort()).toEqual([...FIELDS, 'densityAtConditions', 'observed', 'standard'].sort())
  })
})
