import { describe, expect, it } from 'vitest'
import { computeCapacityTable, type CapacityTable, type LyingSurvey, type TankSurvey } from '../../../core/tank/index.ts'
import { must } from '../../support/must.ts'
import { inputOf, publishedRows, type PublishedRow } from '../../support/published-rows.ts'
import { aLyingSurvey, anUprightSurvey } from '../../support/surveys.ts'

/**
 * Whole capacity tables, from what was measured at the tank to the printed entry, against the worked tanks of
 * D. Jones, "Calculating Tank Volume" (rows in tests/published/tank-calibration): two upright tanks on conical bottoms,
 * strapped outside and measured inside, and three lying ones. The table is in gallons per inch.
 */
const IN_INCHES = { volumeUnit: 'gal', levelUnit: 'in', step: '1 in' } as const

/** A tape around the plate of a tank that is so wide inside. */
function outsideCircumference(row: PublishedRow, plate: number): string {
  return `${String(Math.PI * (Number(inputOf(row, 'diameter').value) + 2 * plate))} in`
}

const PLATE = 0.25
const uprightAs: Readonly<Record<'strapped outside' | 'measured inside', (row: PublishedRow) => Pick<Parameters<typeof anUprightSurvey>[0] & object, 'measured' | 'courses'>>> = {
  'strapped outside': (row) => ({ measured: 'outside-circumference', courses: [0, 1, 2].map(() => ({ height: '4 ft', plate: `${PLATE} in`, readings: [outsideCircumference(row, PLATE)] })) }),
  'measured inside': (row) => ({ measured: 'inside-radius', courses: [0, 1, 2].map(() => ({ height: '4 ft', plate: `${PLATE} in`, readings: [`${Number(inputOf(row, 'diameter').value) / 2} in`] })) }),
}

function uprightSurvey(row: PublishedRow, how: keyof typeof uprightAs): TankSurvey {
  const down = row.section.endsWith('down')
  const cone = inputOf(row, 'cone').value
  // heights are from the lowest point of the inside: the tip of a cone that points down, the corner of one that points up
  return anUprightSurvey({ ...IN_INCHES, ...uprightAs[how](row), bottom: { kind: down ? 'cone-down' : 'cone-up', height: `${cone} in` }, datum: down ? `-${cone} in` : '0 in' })
}

function lyingSurvey(row: PublishedRow): TankSurvey {
  const end: LyingSurvey['ends'][0] = row.section.includes('torispherical')
    ? { kind: 'torispherical', crown: `${inputOf(row, 'crown').value} in`, knuckle: `${inputOf(row, 'knuckle').value} in` }
    : { kind: row.section.includes('dished') ? 'dished' : 'ellipsoidal', depth: `${inputOf(row, 'depth').value} in` }
  return aLyingSurvey({ ...IN_INCHES, diameter: `${inputOf(row, 'diameter').value} in`, length: `${inputOf(row, 'length').value} in`, ends: [end, end] })
}

/** The entry of a table at a whole inch, and one unit of its last printed digit. */
function entryAt(table: CapacityTable, inches: string): { readonly volume: number; readonly digit: number } {
  const [, volume = ''] = table.rows.find(([millimetres]) => Math.abs(Number(millimetres) - Number(inches) * 25.4) < 1e-6) ?? []
  expect(volume).toMatch(/^\d+(\.\d+)?$/)
  return { volume: Number(volume), digit: 10 ** -(volume.split('.')[1]?.length ?? 0) }
}

function expectPrinted(row: PublishedRow, survey: TankSurvey): void {
  const table = must(computeCapacityTable(survey))
  const { volume, digit } = entryAt(table, inputOf(row, 'height').value)
  const printed = Number(row.expected.find(({ name }) => name === 'volume')?.value)
  expect(Math.abs(volume - printed), `${row.id}: table ${volume}, printed ${printed}`).toBeLessThanOrEqual(digit / 2 + 1e-9 * printed)
}

for (const how of ['strapped outside', 'measured inside'] as const) {
  describe(`an upright tank ${how}`, () => {
    it.each(publishedRows('tank-calibration/bottoms.json').map((row) => [row.id, row] as const))('%s', (_id, row) => expectPrinted(row, uprightSurvey(row, how)))
  })
}

describe('a lying tank', () => {
  const rows = publishedRows('tank-calibration/lying-and-spheres.json').filter(({ id }) => id.startsWith('jones/'))
  it.each(rows.map((row) => [row.id, row] as const))('%s', (_id, row) => expectPrinted(row, lyingSurvey(row)))
})
