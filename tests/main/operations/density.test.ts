import { describe, expect, it } from 'vitest'
import { callOperation } from '../../../main/operations/call-operation.ts'
import { OPERATIONS, type InputOf, type OperationName } from '../../../main/operations/contracts/index.ts'
import { openContext } from '../../../main/shells/open-context.ts'

type Pure = 'density-conversion' | 'blend-density' | 'mass-and-weight' | 'water-density'

async function called<N extends Pure>(name: N, input: InputOf<N>): Promise<unknown> {
  const context = await openContext(null, () => undefined)
  const answer = await callOperation(name, input, context, { progress: () => undefined, signal: new AbortController().signal })
  if (!('result' in answer)) return answer
  OPERATIONS[name satisfies OperationName].output.parse(answer.result)
  return answer.result
}

describe('operations on densities and weights, with no ledger', () => {
  // API MPMS 11.5: RD = 141.5 / (36 + 131.5) = 0.84478
  it('density-conversion', async () => {
    expect(await called('density-conversion', { commodity: 'refined', density: { value: '36.0 degAPI' }, baseTemperature: '60 degF' })).toMatchObject({ api: { value: '36.00', unit: 'degAPI' }, relativeDensity: { value: '0.84478', unit: 'RD' } })
  })

  it('blend-density', async () => {
    expect(await called('blend-density', { baseTemperature: '15 degC', batches: [{ density: '800 kg/m3', volume: '500 m3' }, { density: '900 kg/m3', volume: '500 m3' }] })).toMatchObject({ density: { value: '850.00', unit: 'kg/m3' } })
  })

  // API MPMS 11.5 (2009): 1.000149926 × 850 − 1.199407795 = 848.928
  it('mass-and-weight', async () => {
    expect(await called('mass-and-weight', { baseTemperature: '15 degC', density: '850 kg/m3', volume: '1 m3' })).toMatchObject({ weightInAir: [{ value: '849', unit: 'kg' }, { value: '0.849', unit: 't' }, {}, {}, {}] })
  })

  // API MPMS 11.4.1: 999.016 kg/m³ at 60 °F
  it('water-density', async () => {
    expect(await called('water-density', { temperature: '60 degF' })).toMatchObject({ density: { value: '999.016', unit: 'kg/m3' }, ratio: null })
  })

  it('refuse with every finding at once', async () => {
    expect(await called('water-density', { temperature: '50 degC', salinity: '35 g/kg' })).toMatchObject({ refused: { findings: [{ code: 'out-of-range', path: 'temperature' }, { code: 'unit-not-accepted', path: 'salinity' }] } })
  })

  it('a certificate needs two lines, a date of the calendar and its laboratory', async () => {
    const answer = await called('density-conversion', { commodity: 'curve', baseTemperature: '15 degC', curve: { certificate: 'CPL-0417', laboratory: '', date: '2026-02-30', points: [{ temperature: '15 degC', density: '846.3 kg/m3' }] } })
    expect(answer).toMatchObject({ refused: { findings: expect.arrayContaining([expect.objectContaining({ code: 'malformed-input', path: 'curve.laboratory' }), expect.objectContaining({ code: 'malformed-input', path: 'curve.date' })]) } })
  })
})
