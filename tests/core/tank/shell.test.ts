import { describe, expect, it } from 'vitest'
import { staticQuantity } from '../../../core/quantity/index.ts'
import { shellCorrection, shellTemperature, SHELL_MATERIALS, type ShellMaterial } from '../../../core/tank/index.ts'
import { parseTemperature } from '../../../core/units/index.ts'
import { must } from '../../support/must.ts'
import { aProduct, anOpeningGauge } from '../../support/snapshots.ts'
import { aCapacityTable, aTank } from '../../support/tanks.ts'

const temperature = (text: string) => must(parseTemperature(text, 't'))

/** α as listed, CTSH-ALPHA rows; the three stainless steels from memory of the standard's list. */
const ALPHA: { readonly [M in ShellMaterial]: readonly [degF: number, degC: number] } = {
  'mild-carbon-steel': [6.2e-6, 1.12e-5], 'stainless-304': [9.6e-6, 1.73e-5], 'stainless-316': [8.83e-6, 1.59e-5], 'stainless-17-4PH': [6e-6, 1.08e-5],
}
const BASES = ['60 degF', '15 degC', '20 degC', '77 degF', '5 degC'] as const

describe('CTSh of every steel, in either unit, at every base', () => {
  for (const material of SHELL_MATERIALS) {
    it.each(BASES)(`${material}, table at %s`, (base) => {
      for (const [liquid, ambient] of [['135 degF', '80 degF'], ['57.2 degC', '26.7 degC'], ['12 degC', '95 degF'], ['20 degF', '-10 degC']] as const) {
        const shell = shellTemperature(temperature(liquid), temperature(ambient))
        const { rounded } = shellCorrection(material, shell, temperature(base))
        const inUnit = (text: string): number => { const [value = '0', unit = ''] = text.split(' '); return unit === shell.unit ? Number(value) : shell.unit === 'degF' ? Number(value) * 1.8 + 32 : (Number(value) - 32) / 1.8 }
        const mean = (7 * inUnit(liquid) + inUnit(ambient)) / 8
        const step = shell.unit === 'degF' ? 1 : 0.5
        expect(Math.abs(shell.value.toNumber() - mean)).toBeLessThanOrEqual(step / 2 + 1e-9)
        const strain = ALPHA[material][shell.unit === 'degF' ? 0 : 1] * (shell.value.toNumber() - inUnit(base))
        expect(Math.abs(Number(rounded.text) - (1 + strain) ** 2)).toBeLessThanOrEqual(0.000005 + 1e-12)
      }
    })
  }

  it('insulated: the shell has the temperature of the liquid, whatever the air', () => {
    expect(shellTemperature(temperature('58.8 degC'), undefined)).toMatchObject({ value: temperature('58.8 degC').value, rounded: null })
  })

  it('the printed 15 °C table was made with 1.116e-5: over 30 °C that is 0.0000024, below the last digit of CTSh but for a tie (CTSH-ALPHA-CS-SI)', () => {
    const ours = Number(shellCorrection('mild-carbon-steel', { value: temperature('45 degC').value, unit: 'degC' }, temperature('15 degC')).rounded.unrounded)
    expect(ours - (1 + 1.116e-5 * 30) ** 2).toBeCloseTo(0.0000024, 7)
  })
})

describe('CTSH-SCOPE: a sphere and a lying cylinder are not corrected', () => {
  const capacityTable = aCapacityTable()
  it.each(['sphere', 'horizontal-cylinder'] as const)('%s: the air is not needed, since nothing is made from it', (shape) => {
    const worksheet = staticQuantity(aTank({ shape }), aProduct(), anOpeningGauge({ temperatures: { liquid: '55.0 degC' } }))
    expect(must(worksheet).quantity.ctsh).toBe('1.00000')
  })

  it.each([['sphere', 'a sphere'], ['horizontal-cylinder', 'a lying cylinder']] as const)('%s: CTSh is 1, and the line says why', (shape, word) => {
    const worksheet = must(staticQuantity(aTank({ shape, capacityTable }), aProduct(), anOpeningGauge({ temperatures: { liquid: '55.0 degC', ambient: '30.0 degC' } })))
    expect(worksheet.quantity.ctsh).toBe('1.00000')
    expect(worksheet.lines.find((line) => line.symbol === 'CTSh')).toMatchObject({ formula: '1', notes: [`${word}: the correction is for upright cylinders only`], clause: 'MPMS-12.1.1 CTSh' })
    expect(worksheet.lines.map((line) => line.symbol)).not.toContain('TSh')
  })

  it('an upright cylinder is, whether it says so or not', () => {
    const gauge = anOpeningGauge({ temperatures: { liquid: '55.0 degC', ambient: '30.0 degC' } })
    const said = must(staticQuantity(aTank({ shape: 'upright-cylinder' }), aProduct(), gauge))
    expect(said.lines).toEqual(must(staticQuantity(aTank(), aProduct(), gauge)).lines)
    expect(said.quantity.ctsh).not.toBe('1.00000')
  })
})
