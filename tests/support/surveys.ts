import type { LyingSurvey, SphereSurvey, UprightSurvey } from '../../core/tank/index.ts'

const common = {
  certificate: 'SRV-2026-0042', issuedBy: 'Invented Calibration Office', issuedOn: '2026-02-03', baseTemperature: '15 degC', measuredAt: '15 degC',
  shellMaterial: 'mild-carbon-steel', volumeUnit: 'm3', levelUnit: 'mm', step: '100 mm', deadwood: [],
} as const

/** One course of 2 m, 62.832 m round, flat bottom, datum at the corner, measured at the temperature of the table. Every part can be replaced. */
export function anUprightSurvey(parts: Partial<UprightSurvey> = {}): UprightSurvey {
  return {
    ...common, deadwood: [], shape: 'upright-cylinder', measured: 'outside-circumference', datum: '0 mm', bottom: { kind: 'flat' },
    courses: [{ height: '2 m', plate: '10 mm', readings: ['62.832 m'] }], ...parts,
  }
}

/** 3 m across and 10 m long with flat ends. */
export function aLyingSurvey(parts: Partial<LyingSurvey> = {}): LyingSurvey {
  return { ...common, deadwood: [], shape: 'horizontal-cylinder', diameter: '3 m', length: '10 m', ends: [{ kind: 'flat' }, { kind: 'flat' }], datum: '0 mm', ...parts }
}

/** 12 m across. */
export function aSphereSurvey(parts: Partial<SphereSurvey> = {}): SphereSurvey {
  return { ...common, deadwood: [], shape: 'sphere', diameter: '12 m', datum: '0 mm', ...parts }
}
