import { describe, expect, it } from 'vitest'
import { computeCapacityTable, tankSurveySchema, TANK_SHAPES } from '../../../core/tank/index.ts'
import { placeFindings } from '../../../renderer/parts/place-findings.ts'
import { surveyForm, surveyOf, surveyPlaces, type SurveyForm } from '../../../renderer/tanks/survey-form.ts'
import { wording } from '../../../core/refusal/index.ts'
import { findingsOf, must } from '../../support/must.ts'
import { anUprightSurvey } from '../../support/surveys.ts'

const common = { certificate: 'SRV-2026-0042', issuedBy: 'Invented Calibration Office', issuedOn: '2026-02-03', baseTemperature: '15 degC', measuredAt: '15 degC', step: '100 mm', datum: '0 mm' } as const
const course = { height: '2 m', plate: '10 mm', paint: '', readings: '62.832 m', lap: '' }
const upright: SurveyForm = { ...surveyForm('upright-cylinder', 'mild-carbon-steel'), ...common, courses: [course] }

describe('the sheet of a survey', () => {
  it('describes what was typed and leaves out what was not', () => {
    expect(surveyOf(upright)).toEqual(anUprightSurvey())
  })

  it('takes several readings of a course from one field, and every part that was filled in', () => {
    const full: SurveyForm = {
      ...upright, courses: [{ ...course, readings: '62.832 m; 62.834 m ;', paint: '0.5 mm', lap: '4 mm' }], tapeTrueAt: '20 degC', tapeCorrection: '1 mm', bottom: 'surveyed', points: [{ distance: '0 m', height: '60 mm' }, { distance: '5 m', height: '10 mm' }],
      headDensity: '850 kg/m3', headModulus: '206000000 kPa', filledLevel: '1 m', filledDensity: '850 kg/m3', filledModulus: '206000000 kPa', tilt: '1 in 250', roofMass: '20 t', roofDensity: '800 kg/m3', roofFrom: '1 m', roofTo: '1.4 m',
      deadwood: [{ name: 'coil', from: '100 mm', to: '400 mm', volume: '1 m3', counts: 'takes' }],
    }
    const survey = tankSurveySchema.parse(surveyOf(full))
    expect(survey).toMatchObject({ courses: [{ readings: ['62.832 m', '62.834 m'], paint: '0.5 mm', lap: '4 mm' }], tape: { trueAt: '20 degC', correction: '1 mm' }, tilt: { ratio: '1 in 250', circumferences: 'square', dips: 'plumb' } })
    expect(must(computeCapacityTable(survey)).rows.length).toBeGreaterThan(20)
  })

  it('describes a lying cylinder with two ends, and a sphere', () => {
    const lying: SurveyForm = { ...surveyForm('horizontal-cylinder', 'stainless-304'), ...common, diameter: '3 m', length: '10 m', ends: [{ kind: 'torispherical', depth: 'not used', crown: '3 m', knuckle: '0.18 m' }, { kind: 'flat', depth: '', crown: '', knuckle: '' }] }
    expect(tankSurveySchema.parse(surveyOf(lying))).toMatchObject({ ends: [{ kind: 'torispherical', crown: '3 m', knuckle: '0.18 m' }, { kind: 'flat' }] })
    expect(tankSurveySchema.safeParse(surveyOf({ ...surveyForm('sphere', 'mild-carbon-steel'), ...common, diameter: '12 m' })).success).toBe(true)
  })

  it.each(TANK_SHAPES)('an empty sheet of a %s is still a survey that can be judged', (shape) => {
    const survey = surveyOf(surveyForm(shape, 'mild-carbon-steel'))
    expect(survey.shape).toBe(shape)
    expect(tankSurveySchema.safeParse(survey).success).toBe(false)
  })
})

it('puts what was refused beside its field, named as the sheet names it', () => {
  const form: SurveyForm = { ...upright, courses: [course, { ...course, plate: '1 m', readings: '62,832 m' }], deadwood: [{ name: 'coil', from: '2 ells', to: '400 mm', volume: '1 m3', counts: 'takes' }] }
  const findings = findingsOf(computeCapacityTable(surveyOf(form))).map((finding) => ({ ...finding, message: wording(finding) }))
  const placed = placeFindings(findings, surveyPlaces(form))
  expect([...placed.errors.keys()].toSorted()).toEqual(['survey-courses-2-plate', 'survey-courses-2-readings', 'survey-deadwood-1-from'])
  expect(placed.errors.get('survey-courses-2-plate')).toBe('Plate, course 2 is 1 m; the limit is 1 to 100 mm (HOUSE survey).')
  expect(placed.others).toEqual([])
})
