import { describe, expect, it } from 'vitest'
import { COMMODITIES } from '../../../core/volume-correction/index.ts'
import { computeCorrection, EMPTY_CORRECTION } from '../../../renderer/density/correction-form.ts'
import { EMPTY_LIQUID, likeProduct, type LiquidForm } from '../../../renderer/density/liquid-form.ts'
import { chosen, editionsOf, settingsFrom, settingsThatApply, basesOf } from '../../../renderer/density/liquid-settings.ts'
import { LIQUIDS } from '../../support/commodities.ts'
import { aProduct } from '../../support/snapshots.ts'

const crudeAt60: LiquidForm = { ...EMPTY_LIQUID, baseTemperature: '60 degF' }

describe('published examples, typed as bare numbers on the bench', () => {
  it('API MPMS 11.1-2004, 11.1.6.1, example 1: crude of 17.785 °API at −27.7 °F, CTPL 1.03301', () => {
    const { value } = computeCorrection({ ...crudeAt60, density: '17.785' }, { ...EMPTY_CORRECTION, temperature: '-27.7', pressure: '0' })
    expect(value).toMatchObject({ ctpl: '1.03301', observed: null })
    expect(value?.densityAtConditions).toBeCloseTo(978.178034364, 6)
  })

  it('API MPMS 11.1-2004, 11.1.6.2, example 1: 823.7 kg/m³ observed at 80.3 °F and −5 psig, 832.0485 at 60 °F, CTPL 0.98997', () => {
    const { value } = computeCorrection({ ...crudeAt60, density: '823.7 kg/m3', instrument: 'meter', densityTemperature: '80.3', densityPressure: '-5' }, { ...EMPTY_CORRECTION, temperature: '80.3', pressure: '-5' })
    expect(value?.unrounded.baseDensity).toBeCloseTo(832.048516184234, 5)
    expect(value?.observed).toMatchObject({ ctpl: '0.98997', toAlternate: '1.00000' })
  })

  it('gives every digit where it is asked for (same example: 0.989966310837)', () => {
    const { value } = computeCorrection({ ...crudeAt60, density: '823.7 kg/m3', instrument: 'meter', densityTemperature: '80.3', densityPressure: '-5' }, { temperature: '80.3', pressure: '-5', rounding: 'none' })
    expect(value?.ctpl.slice(0, 13)).toBe('0.98996631083')
  })
})

describe('every commodity', () => {
  it.each(COMMODITIES)('%s is corrected with the settings that it asks for', (commodity) => {
    const { density, temperature, baseTemperature = '15 degC', ...settings } = LIQUIDS[commodity]
    const form = { ...EMPTY_LIQUID, ...settingsFrom({ commodity, edition: editionsOf(commodity)[0] ?? 'MPMS-11.1-2004', baseTemperature, ...settings }), density }
    const { value, findings, missing } = computeCorrection(form, { ...EMPTY_CORRECTION, temperature })
    expect({ findings, missing }).toEqual({ findings: [], missing: [] })
    expect(value?.worksheet.at(-1)?.symbol).toBe('CTPL')
  })

  it.each(COMMODITIES)('%s says of an empty sheet only what is still needed', (commodity) => {
    const { findings, missing } = computeCorrection(chosen(EMPTY_LIQUID, { commodity }), EMPTY_CORRECTION)
    expect(findings).toEqual([])
    expect(missing).toContain('correction-temperature')
  })
})

describe('which settings apply', () => {
  it.each([
    ['crude', 'MPMS-11.1-2004', []], ['crude', 'ASTM-D1250-80', ['figures']], ['special', 'MPMS-11.1-2004', ['alpha']], ['special', 'ASTM-D1250-80', ['alpha', 'figures']], ['lpg', 'MPMS-11.2.4-2007', ['molarMass']],
    ['chemical', 'ASTM-D1555', ['component']], ['ethanol', 'CFR40-80.1426', []], ['ethanol', 'OIML-R22', ['content']], ['curve', 'LAB-CERTIFICATE', ['curve']], ['water', 'MPMS-11.4.1', []], ['water', 'UNESCO-44', ['salinity']],
  ] as const)('%s by %s', (commodity, edition, settings) => {
    expect([...settingsThatApply({ commodity, edition, baseTemperature: '60 degF' })]).toEqual(settings)
  })

  it('another commodity brings an edition and a base temperature that it has', () => {
    expect(chosen(EMPTY_LIQUID, { commodity: 'ethanol' })).toMatchObject({ edition: 'CFR40-80.1426', baseTemperature: '60 degF' })
    expect(basesOf('biodiesel', 'EN-14214')).toEqual(['15 degC'])
    expect(chosen(EMPTY_LIQUID, { edition: 'ASTM-D1250-80' })).toMatchObject({ commodity: 'crude', edition: 'ASTM-D1250-80', baseTemperature: '15 degC' })
  })

  it('a product on record brings its own', () => {
    expect(likeProduct(EMPTY_LIQUID, aProduct({ commodity: 'special', alpha: '0.000510 /degF' }))).toMatchObject({ commodity: 'special', alpha: '0.000510 /degF' })
  })
})

describe('what is wrong', () => {
  it('stands at its field', () => {
    const { value, findings } = computeCorrection({ ...EMPTY_LIQUID, density: '845.3', instrument: 'hydrometer', densityTemperature: '300' }, { ...EMPTY_CORRECTION, temperature: 'warm', pressure: '20000' })
    expect(value).toBeUndefined()
    expect(findings.map(({ field }) => field).toSorted()).toEqual(['correction-pressure', 'correction-temperature', 'liquid-densityTemperature'])
  })

  it('an observed density without its temperature is not taken for a base density', () => {
    const { value, missing } = computeCorrection({ ...EMPTY_LIQUID, density: '845.3', instrument: 'meter' }, { ...EMPTY_CORRECTION, temperature: '20' })
    expect(value).toBeUndefined()
    expect(missing).toEqual(['liquid-densityTemperature'])
  })

  it('names no certificate that was not named yet', () => {
    const curve = { certificate: '', laboratory: '', date: '', tolerance: '', of: 'density', points: [{ temperature: '10', value: '1025.5' }, { temperature: '20', value: '1018.5' }] } as const
    const { findings } = computeCorrection({ ...chosen(EMPTY_LIQUID, { commodity: 'curve' }), curve: { ...curve, points: [...curve.points] } }, { ...EMPTY_CORRECTION, temperature: '40' })
    expect(findings.map(({ message }) => message)).toEqual(['Temperature: 40 degC is outside the product curve (10 degC to 20 degC); a curve is not carried on past its ends.'])
  })
})
