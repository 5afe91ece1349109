import { describe, expect, it } from 'vitest'
import { sourceKeyOf, SOURCES } from '../../../core/sources.ts'
import { wording } from '../../../core/refusal/index.ts'
import { computeCapacityTable, type LyingSurvey, type SphereSurvey, type TankSurvey, type UprightSurvey } from '../../../core/tank/index.ts'
import { findingsOf } from '../../support/must.ts'
import { aLyingSurvey, anUprightSurvey, aSphereSurvey } from '../../support/surveys.ts'

interface Wrong { readonly says: string; readonly survey: TankSurvey; /** code, path, value, limit */ readonly answer: readonly [string, string, string, string] }

const LENGTH = 'a length as 12.345 m, 8421 mm, 495.625 in or 41 ft 3 5/8 in'
const upright = (parts: Partial<UprightSurvey>): UprightSurvey => anUprightSurvey(parts)
const course = (parts: Partial<UprightSurvey['courses'][number]>): UprightSurvey => anUprightSurvey({ courses: [{ height: '2 m', plate: '10 mm', readings: ['62.832 m'], ...parts }] })
const wood = (parts: Partial<UprightSurvey['deadwood'][number]>): UprightSurvey => anUprightSurvey({ deadwood: [{ name: 'coil', from: '100 mm', to: '400 mm', volume: '1 m3', counts: 'takes', ...parts }] })
const tilt = (ratio: string): UprightSurvey => anUprightSurvey({ tilt: { ratio, circumferences: 'square', dips: 'plumb' } })
const lying = (parts: Partial<LyingSurvey>): LyingSurvey => aLyingSurvey(parts)
const sphere = (parts: Partial<SphereSurvey>): SphereSurvey => aSphereSurvey(parts)
const head = { density: '850 kg/m3', modulus: '206000000 kPa' }

const WRONG: readonly Wrong[] = [
  { says: 'a course without height', survey: course({ height: 'tall' }), answer: ['unreadable-value', 'survey.courses.1.height', 'tall', LENGTH] },
  { says: 'a course in the unit of a volume', survey: course({ height: '2 bbl' }), answer: ['unit-not-accepted', 'survey.courses.1.height', '2 bbl', LENGTH] },
  { says: 'a course of 20 m', survey: course({ height: '20 m' }), answer: ['out-of-range', 'survey.courses.1.height', '20 m', '0.2 to 6 m'] },
  { says: 'a plate of a metre', survey: course({ plate: '1 m' }), answer: ['out-of-range', 'survey.courses.1.plate', '1 m', '1 to 100 mm'] },
  { says: 'a plate of nothing', survey: course({ plate: '0 mm' }), answer: ['out-of-range', 'survey.courses.1.plate', '0 mm', '1 to 100 mm'] },
  { says: 'a centimetre of paint and more', survey: course({ paint: '11 mm' }), answer: ['out-of-range', 'survey.courses.1.paint', '11 mm', '0 to 10 mm'] },
  { says: 'a lap below nothing', survey: course({ lap: '-1 mm' }), answer: ['out-of-range', 'survey.courses.1.lap', '-1 mm', '0 to 0.5 m'] },
  { says: 'a circumference that is a diameter in mm', survey: course({ readings: ['2000 mm'] }), answer: ['out-of-range', 'survey.courses.1.readings.1', '2000 mm', '3 to 400 m'] },
  { says: 'a decimal comma in a circumference', survey: course({ readings: ['62,832 m'] }), answer: ['unreadable-value', 'survey.courses.1.readings.1', '62,832 m', LENGTH] },
  { says: 'two readings of one course that cannot both be true', survey: course({ readings: ['62.832 m', '63.832 m'] }), answer: ['out-of-range', 'survey.courses.1.readings', '62.832 m, 63.832 m', 'readings of one course within 0.5 % of each other'] },
  { says: 'a course of another tank', survey: upright({ courses: [{ height: '2 m', plate: '10 mm', readings: ['62.832 m'] }, { height: '2 m', plate: '10 mm', readings: ['68.832 m'] }] }), answer: ['out-of-range', 'survey.courses.2.readings', '68.832 m', 'within 2 % of the course below it'] },
  { says: 'paint on an inside radius', survey: upright({ measured: 'inside-radius', courses: [{ height: '2 m', plate: '10 mm', paint: '1 mm', readings: ['10 m'] }] }), answer: ['value-not-used', 'survey.courses.1.paint', '1 mm', 'radii were measured inside; leave it out'] },
  { says: 'a tape for inside radii', survey: upright({ measured: 'inside-radius', tape: { trueAt: '20 degC' }, courses: [{ height: '2 m', plate: '10 mm', readings: ['10 m'] }] }), answer: ['value-not-used', 'survey.tape', '20 degC', 'radii were measured by an optical method; leave the tape out'] },
  { says: 'a circumference for a radius', survey: upright({ measured: 'inside-radius', courses: [{ height: '2 m', plate: '10 mm', readings: ['66 m'] }] }), answer: ['out-of-range', 'survey.courses.1.readings.1', '66 m', '0.5 to 65 m'] },
  { says: 'a tape without unit of temperature', survey: upright({ tape: { trueAt: '20' } }), answer: ['unreadable-value', 'survey.tape.trueAt', '20', 'a temperature as 88.3 degF or 31.25 degC'] },
  { says: 'a tape that is wrong by a metre', survey: upright({ tape: { trueAt: '20 degC', correction: '1 m' } }), answer: ['out-of-range', 'survey.tape.correction', '1 m', '-100 to 100 mm'] },
  { says: 'a base temperature out of this world', survey: upright({ baseTemperature: '500 degC' }), answer: ['out-of-range', 'survey.baseTemperature', '500 degC', '-50 to 150 degC'] },
  { says: 'no temperature of the shell', survey: upright({ measuredAt: 'warm' }), answer: ['unreadable-value', 'survey.measuredAt', 'warm', 'a temperature as 88.3 degF or 31.25 degC'] },
  { says: 'a day that is not in the calendar', survey: upright({ issuedOn: '2026-02-30' }), answer: ['unreadable-value', 'survey.issuedOn', '2026-02-30', 'a date of the calendar as 2024-02-11'] },
  { says: 'a step of nothing', survey: upright({ step: '0 mm' }), answer: ['out-of-range', 'survey.step', '0 mm', '1 mm to 1 m'] },
  { says: 'a tank that leans 1 in 50', survey: tilt('1 in 50'), answer: ['out-of-range', 'survey.tilt.ratio', '1 in 50', 'at most 1 in 70; a tank that leans more is not computed by this method'] },
  { says: 'a lean of 2 %, over 1 in 70', survey: tilt('0.02'), answer: ['out-of-range', 'survey.tilt.ratio', '0.02', 'at most 1 in 70; a tank that leans more is not computed by this method'] },
  { says: 'a lean in degrees', survey: tilt('0.5°'), answer: ['unreadable-value', 'survey.tilt.ratio', '0.5°', 'a lean as 1 in 250, or 0.004'] },
  { says: 'a lean of 1 in 0', survey: tilt('1 in 0'), answer: ['unreadable-value', 'survey.tilt.ratio', '1 in 0', 'a lean as 1 in 250, or 0.004'] },
  { says: 'a liquid as heavy as mercury', survey: upright({ head: { ...head, density: '13590 kg/m3' } }), answer: ['out-of-range', 'survey.head.density', '13590 kg/m3', '500 to 1200 kg/m3'] },
  { says: 'a shell as soft as rubber', survey: upright({ head: { ...head, modulus: '206000 kPa' } }), answer: ['out-of-range', 'survey.head.modulus', '206000 kPa', '150000000 to 250000000 kPa (22000000 to 36000000 psi)'] },
  { says: 'water in the tank without its level', survey: upright({ filledTo: { level: '-1 m', ...head } }), answer: ['out-of-range', 'survey.filledTo.level', '-1 m', '0 to 60 m'] },
  { says: 'a datum plate under the floor', survey: upright({ datum: '-100 mm' }), answer: ['out-of-range', 'survey.datum', '-100 mm', 'not below the lowest point of the bottom'] },
  { says: 'a datum plate above the tank', survey: upright({ datum: '3 m' }), answer: ['out-of-range', 'survey.datum', '3 m', 'below the top of the tank'] },
  { says: 'a cone without height', survey: upright({ bottom: { kind: 'cone-up', height: '0 mm' } }), answer: ['out-of-range', 'survey.bottom.height', '0 mm', '1 mm to 5 m'] },
  { says: 'points of the floor that begin off the centre', survey: upright({ bottom: { kind: 'surveyed', points: [{ distance: '1 m', height: '0 mm' }, { distance: '4 m', height: '10 mm' }] } }), answer: ['out-of-range', 'survey.bottom.points.1.distance', '1 m', '0, the centre, first'] },
  { says: 'points of the floor outside the shell', survey: upright({ bottom: { kind: 'surveyed', points: [{ distance: '0 m', height: '0 mm' }, { distance: '14 m', height: '10 mm' }] } }), answer: ['out-of-range', 'survey.bottom.points.2.distance', '14 m', 'further out than the point before it, and inside the shell'] },
  { says: 'deadwood upside down', survey: wood({ from: '400 mm', to: '100 mm' }), answer: ['out-of-range', 'survey.deadwood.1.to', '100 mm', 'above 400 mm, where it begins'] },
  { says: 'deadwood of no volume', survey: wood({ volume: '0 m3' }), answer: ['out-of-range', 'survey.deadwood.1.volume', '0 m3', 'more than 0'] },
  { says: 'deadwood above the roof', survey: wood({ to: '9 m' }), answer: ['out-of-range', 'survey.deadwood.1.to', '9 m', 'not above the top of the shell'] },
  { says: 'deadwood that takes more than there is', survey: wood({ volume: '500 m3' }), answer: ['capacity-table-line', 'survey.table.rows.3', '200, -103.960', 'a level in mm and a volume, both decimal numbers of zero or more'] },
  { says: 'a floating roof of no mass', survey: upright({ roof: { mass: '0 t', densityInAir: '800 kg/m3', from: '1 m', to: '1.4 m' } }), answer: ['out-of-range', 'survey.roof.mass', '0 t', 'more than 0'] },
  { says: 'a critical zone upside down', survey: upright({ roof: { mass: '20 t', densityInAir: '800 kg/m3', from: '1.4 m', to: '1 m' } }), answer: ['out-of-range', 'survey.roof.to', '1 m', 'above 1.4 m, where the roof begins to float'] },
  { says: 'a critical zone above the shell', survey: upright({ roof: { mass: '20 t', densityInAir: '800 kg/m3', from: '1 m', to: '3 m' } }), answer: ['out-of-range', 'survey.roof.to', '3 m', 'not above the top of the shell'] },
  { says: 'a lying tank of 200 m', survey: lying({ diameter: '200 m' }), answer: ['out-of-range', 'survey.diameter', '200 m', '0.5 to 130 m'] },
  { says: 'an end deeper than the tank is round', survey: lying({ ends: [{ kind: 'dished', depth: '2 m' }, { kind: 'flat' }] }), answer: ['out-of-range', 'survey.ends.1.depth', '2 m', 'at most the radius of the tank'] },
  { says: 'a knuckle wider than the tank', survey: lying({ ends: [{ kind: 'flat' }, { kind: 'torispherical', crown: '3 m', knuckle: '1.6 m' }] }), answer: ['out-of-range', 'survey.ends.2.knuckle', '1.6 m', 'less than the radius of the tank'] },
  { says: 'a crown narrower than the tank', survey: lying({ ends: [{ kind: 'torispherical', crown: '1 m', knuckle: '0.1 m' }, { kind: 'flat' }] }), answer: ['out-of-range', 'survey.ends.1.crown', '1 m', 'at least the radius of the tank'] },
  { says: 'a sphere without diameter', survey: sphere({ diameter: '12' }), answer: ['unreadable-value', 'survey.diameter', '12', LENGTH] },
  { says: 'a datum below a sphere', survey: sphere({ datum: '-1 mm' }), answer: ['out-of-range', 'survey.datum', '-1 mm', '0 to 5 m'] },
  { says: 'a datum above a sphere', survey: sphere({ diameter: '4 m', datum: '4.5 m' }), answer: ['out-of-range', 'survey.datum', '4.5 m', 'below the top of the tank'] },
]

describe('every wrong survey is refused at its place', () => {
  it.each(WRONG)('$says', ({ survey, answer }) => {
    const findings = findingsOf(computeCapacityTable(survey))
    const [first] = findings
    expect([first?.code, first?.path, first?.value, first?.limit]).toEqual(answer)
    for (const finding of findings) {
      expect(Object.keys(SOURCES)).toContain(sourceKeyOf(finding.clause))
      expect(wording(finding)).toContain(finding.limit)
    }
  })

  it('with everything that is wrong at once', () => {
    const survey = upright({ issuedOn: 'today', step: '3 km', courses: [{ height: '2', plate: 'thin', readings: ['round'] }], head: { density: 'heavy', modulus: 'stiff' }, datum: 'low' })
    expect(findingsOf(computeCapacityTable(survey)).map(({ code, path }) => `${code} ${path}`)).toEqual([
      'unreadable-value survey.datum', 'unreadable-value survey.head.density', 'unreadable-value survey.head.modulus', 'unreadable-value survey.issuedOn', 'out-of-range survey.step',
      'unreadable-value survey.courses.1.height', 'unreadable-value survey.courses.1.plate', 'unreadable-value survey.courses.1.readings.1',
    ].map((line) => line.replace('out-of-range survey.step', 'unit-not-accepted survey.step')))
  })
})
