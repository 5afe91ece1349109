import { describe, expect, it } from 'vitest'
import { capacityChart } from '../../../core/chart/index.ts'
import { capacityTableSchema, type CapacityTable } from '../../../core/tank/index.ts'
import { drawn } from './drawn.ts'
import { pointsOf } from './points.ts'

/** A table of four rows whose third step is worth half a millimetre's volume less: a roof takes it. */
function aTable(levelUnit: CapacityTable['levelUnit']): CapacityTable {
  return capacityTableSchema.parse({
    certificate: 'CT-1', issuedBy: 'Calibration company', issuedOn: '2025-05-02', baseTemperature: '60 degF', volumeUnit: 'bbl', levelUnit,
    rows: [['0', '10'], ['304.8', '619.6'], ['609.6', '1229.2'], ['914.4', '1534']],
  })
}

describe('capacity table', () => {
  it('draws the rows as they stand, in feet when the table is written in feet (304.8 mm = 1 ft, NIST-HB44-C)', () => {
    expect(pointsOf(capacityChart(aTable('ft-in')), 'volume')).toEqual([[0, 10], [1, 619.6], [2, 1229.2], [3, 1534]])
  })

  it('draws the volume of a millimetre as steps', () => {
    expect(pointsOf(capacityChart(aTable('ft-in')), 'volume per mm')).toEqual([[0, 2], [1, 2], [1, 2], [2, 2], [2, 1], [3, 1]])
  })

  it('draws metres for a metric table', () => {
    expect(pointsOf(capacityChart(aTable('mm')), 'volume')).toEqual([[0, 10], [0.3048, 619.6], [0.6096, 1229.2], [0.9144, 1534]])
    expect(drawn(capacityChart(aTable('mm')))).toContain('level above datum, m')
  })

  it('rings the steps that a misprinted row makes stand out, and nothing where all is even', () => {
    const even = Array.from({ length: 12 }, (_, i): [string, string] => [String(i * 1000), String(i * 500)])
    const table = (rows: [string, string][]): CapacityTable => ({ ...aTable('mm'), rows })
    expect(drawn(capacityChart(table(even)))).not.toContain('stands out')
    // row 5, 2500, printed as 2600: the steps on either side of it are worth 0.6 and 0.4 per mm instead of 0.5
    const wrong = even.map(([mm, volume], i): [string, string] => [mm, i === 5 ? '2600' : volume])
    expect(pointsOf(capacityChart(table(wrong)), 'stands out')).toEqual([[4.5, 0.6], [5.5, 0.4]])
  })
})
