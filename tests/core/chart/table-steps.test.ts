import { describe, expect, it } from 'vitest'
import { tableSteps } from '../../../core/chart/index.ts'
import { capacityTableSchema } from '../../../core/tank/index.ts'

it('gives what a millimetre is worth between rows: 1219.2 bbl over 609.6 mm is 2 bbl/mm (arithmetic)', () => {
  const table = capacityTableSchema.parse({
    certificate: 'CT-1', issuedBy: 'Calibration company', issuedOn: '2025-05-02', baseTemperature: '60 degF', volumeUnit: 'bbl', levelUnit: 'mm', rows: [['0', '10'], ['609.6', '1229.2']],
  })
  expect(tableSteps(table).map((step) => [step.from.toFixed(), step.to.toFixed(), step.perMillimetre.toFixed()])).toEqual([['0', '609.6', '2']])
})

describe('a table of one step', () => {
  it('has one step', () => {
    const rows: [string, string][] = [['0', '0'], ['1', '5']]
    const table = capacityTableSchema.parse({ certificate: 'CT-1', issuedBy: 'Calibration company', issuedOn: '2025-05-02', baseTemperature: '15 degC', volumeUnit: 'L', levelUnit: 'mm', rows })
    expect(tableSteps(table)).toHaveLength(1)
  })
})
