import { bottomVolume, computeCapacityTable, lyingCylinderVolume, sphereVolume, type End } from '../../../core/tank/index.ts'
import { display } from '../../../core/rounding/index.ts'
import { must } from '../../support/must.ts'
import { checkPublishedRows, inputOf, publishedRows, type PublishedRow } from '../../support/published-rows.ts'
import { anUprightSurvey } from '../../support/surveys.ts'

/** 1 gal = 231 in³, 1 in = 0.0254 m, exact. */
const GALLON = 231 * 0.0254 ** 3
const METRES: Readonly<Record<string, number>> = { in: 0.0254, ft: 0.3048, m: 1 }
const length = (row: PublishedRow, name: string): number => {
  const { value, unit } = inputOf(row, name)
  return Number(value) * (METRES[unit] ?? 0)
}
const inUnit = (cubicMetres: number, unit: string): number => (unit === 'gal' ? cubicMetres / GALLON : cubicMetres)

function endOf(row: PublishedRow): End {
  if (row.section.includes('flat')) return { kind: 'flat' }
  if (row.section.includes('torispherical')) return { kind: 'torispherical', crown: length(row, 'crown'), knuckle: length(row, 'knuckle') }
  return { kind: row.section.includes('dished') ? 'dished' : 'ellipsoidal', depth: length(row, 'depth') }
}

checkPublishedRows('tank-calibration/lying-and-spheres.json', (row, expected) => {
  const radius = length(row, 'diameter') / 2
  const height = length(row, 'height')
  if (row.section === 'sphere') return sphereVolume(radius, height)
  const end = endOf(row)
  return inUnit(lyingCylinderVolume({ radius, length: length(row, 'length'), ends: [end, end] }, height), expected.unit)
})

checkPublishedRows('tank-calibration/bottoms.json', (row, expected) => {
  const radius = length(row, 'diameter') / 2
  const cone = length(row, 'cone')
  const down = row.section.endsWith('down')
  const z = length(row, 'height') - (down ? cone : 0)
  const bottom = bottomVolume([{ radius: 0, height: down ? -cone : cone }, { radius, height: 0 }], z)
  return inUnit(Math.PI * radius ** 2 * Math.max(z, 0) + bottom, expected.unit)
})

checkPublishedRows('tank-calibration/strapping.json', (row, expected) => (row.id.startsWith('six-rings/') ? ringOf(row, expected.name) : plateOf(row)))

/** What the plate takes off the circumference [ft]: 2π (r of a bare circle − inside radius), at one temperature and with an untouched tape. */
function plateOf(row: PublishedRow): string {
  const survey = anUprightSurvey({ courses: [{ height: '2 m', plate: `${inputOf(row, 'plate').value} ft`, readings: ['100 ft'] }] })
  const radius = must(computeCapacityTable(survey)).madeBy?.find((line) => line.symbol === 'r1')
  return display((100 * 304.8 - 2 * Math.PI * Number(radius?.unrounded)) / 304.8, 3)
}

/** Inside radius or circumference [in] of one ring of the whole tank, from the outside circumference that its outside radius makes. */
function ringOf(row: PublishedRow, quantity: string): string {
  const rings = publishedRows('tank-calibration/strapping.json').filter(({ id }) => id.startsWith('six-rings/'))
  const courses = rings.map((ring) => ({ height: `${inputOf(ring, 'height').value} in`, plate: `${inputOf(ring, 'plate').value} in`, readings: [`${String(2 * Math.PI * Number(inputOf(ring, 'outside radius').value))} in`] }))
  const line = must(computeCapacityTable(anUprightSurvey({ courses }))).madeBy?.find(({ symbol }) => symbol === `r${inputOf(row, 'ring').value}`)
  const inches = Number(line?.unrounded) / 25.4
  return display(quantity === 'inside radius' ? inches : 2 * Math.PI * inches, 3)
}
