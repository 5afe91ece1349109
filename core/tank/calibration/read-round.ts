import { accepted, refused, type Finding, type Outcome } from '../../refusal/index.ts'
import type { Decimal } from '../../units/index.ts'
import type { WorksheetLine } from '../../worksheet/index.ts'
import { endDepth, type End } from './end-volume.ts'
import { collector, metres, RANGES } from './measured.ts'
import { lyingCylinderVolume, sphereVolume } from './round-volumes.ts'
import { readCommon, type CommonSurvey } from './survey-common.ts'
import { commonLines, shownLine } from './survey-lines.ts'
import type { LyingSurvey, SphereSurvey } from './survey.ts'

/** Volume at a level of a lying cylinder or a sphere, and the lines that say how [m, m³]. */
export interface RoundTank {
  readonly volumeAt: (level: number) => number
  readonly top: number
  readonly bends: readonly number[]
  readonly step: Decimal
  readonly bottom: undefined
  readonly lines: readonly WorksheetLine[]
}

/**
 * Reads the survey of a lying cylinder or a sphere; all findings at once. Every length goes to base temperature.
 *   l = lm [1 + α (Tb − Tm)]
 * Refuses `out-of-range` and unreadable texts.
 * @param survey as the schema accepted it
 * @param path of the survey
 * @source MPMS-2.2E measurements
 * @source API-2552 measurements
 */
export function readRound(survey: LyingSurvey | SphereSurvey, path: string): Outcome<RoundTank> {
  const { findings, keep } = collector()
  const common = readCommon(survey, path)
  const diameter = keep(metres(survey.diameter, `${path}.diameter`, RANGES.diameter))
  const datum = keep(metres(survey.datum, `${path}.datum`, { from: 0, to: 5, says: '0 to 5 m' }))
  const length = survey.shape === 'sphere' ? 0 : keep(metres(survey.length, `${path}.length`, RANGES.length))
  const ends = survey.shape === 'sphere' ? [] : survey.ends.map((end, i) => readEnd(end, diameter, `${path}.ends.${i + 1}`))
  findings.push(...common.findings, ...ends.flatMap((end) => end.findings))
  if (findings.length > 0 || common.value === undefined || diameter === undefined || datum === undefined || length === undefined) return refused(...findings)
  const grow = 1 + common.value.alpha * common.value.toBase
  const radius = diameter * grow / 2
  const top = 2 * radius - datum
  const [one, two] = ends.map(({ end }) => grown(end, grow))
  const deadwood = common.value.deadwood
  const beyond = deadwood.findIndex(({ to }) => to > top + 1e-9)
  if (beyond >= 0) return refused({ code: 'out-of-range', path: `${path}.deadwood.${beyond + 1}.to`, value: survey.deadwood[beyond]?.to ?? '', limit: 'not above the top of the tank', clause: 'MPMS-2.2A deadwood' })
  const open = survey.shape === 'sphere' ? (h: number) => sphereVolume(radius, h)
    : (h: number) => lyingCylinderVolume({ radius, length: length * grow, ends: [one ?? { kind: 'flat' }, two ?? { kind: 'flat' }] }, h)
  const taken = (level: number): number => deadwood.reduce((sum, { from, to, volume }) => sum + volume * Math.min(Math.max((level - from) / (to - from), 0), 1), 0)
  return accepted({
    volumeAt: (level) => open(level + datum) - taken(level), top, step: common.value.step, bottom: undefined,
    bends: deadwood.flatMap(({ from, to }) => [from, to]),
    lines: [...commonLines(survey, common.value), ...roundLines(survey, common.value, { radius, length: length * grow, full: open(2 * radius), taken: taken(top), depths: [one, two].map((end) => (end === undefined ? 0 : endDepth(end, radius))) })],
  })
}

interface ReadEnd { readonly end: End; readonly findings: readonly Finding[] }

function readEnd(end: LyingSurvey['ends'][number], diameter: number | undefined, path: string): ReadEnd {
  const { findings, keep } = collector()
  const radius = diameter === undefined ? Number.POSITIVE_INFINITY : diameter / 2
  const outside = (part: string, value: string, limit: string): void => { findings.push({ code: 'out-of-range', path: `${path}.${part}`, value, limit, clause: 'MPMS-2.2E heads' }) }
  switch (end.kind) {
    case 'flat': case 'hemispherical': return { end: { kind: end.kind }, findings }
    case 'ellipsoidal': case 'dished': {
      const depth = keep(metres(end.depth, `${path}.depth`, { from: 0.001, to: 65, says: '1 mm to the radius of the tank' }))
      if (depth !== undefined && depth > radius) outside('depth', end.depth, 'at most the radius of the tank')
      return { end: { kind: end.kind, depth: depth ?? 1 }, findings }
    }
    case 'torispherical': {
      const crown = keep(metres(end.crown, `${path}.crown`, { from: 0.25, to: 300, says: '0.25 to 300 m' }))
      const knuckle = keep(metres(end.knuckle, `${path}.knuckle`, { from: 0.001, to: 65, says: '1 mm to 65 m' }))
      if (knuckle !== undefined && knuckle >= radius) outside('knuckle', end.knuckle, 'less than the radius of the tank')
      if (crown !== undefined && diameter !== undefined && crown < radius) outside('crown', end.crown, 'at least the radius of the tank')
      return { end: { kind: 'torispherical', crown: crown ?? 1, knuckle: knuckle ?? 1 }, findings }
    }
  }
}

function grown(end: End, by: number): End {
  switch (end.kind) {
    case 'flat': case 'hemispherical': return end
    case 'ellipsoidal': case 'dished': return { ...end, depth: end.depth * by }
    case 'torispherical': return { ...end, crown: end.crown * by, knuckle: end.knuckle * by }
  }
}

interface RoundFigures { readonly radius: number; readonly length: number; readonly full: number; readonly taken: number; readonly depths: readonly number[] }

function roundLines(survey: LyingSurvey | SphereSurvey, common: CommonSurvey, figures: RoundFigures): readonly WorksheetLine[] {
  const sphere = survey.shape === 'sphere'
  const clause = sphere ? 'API-2552 partial volumes' : 'MPMS-2.2E partial volumes'
  const mm = { unit: 'mm', decimals: 3 } as const
  return [
    shownLine({ symbol: 'r', name: 'Inside radius at base temperature', value: figures.radius * 1000, ...mm, formula: 'D / 2 × [1 + α (Tb − Tm)]', from: ['α', 'Tb', 'Tm'], clause, notes: [`D = ${survey.diameter}, Tb − Tm = ${common.toBase} ${common.base.unit}`] }),
    ...(survey.shape === 'sphere' ? [] : [
      shownLine({ symbol: 'l', name: 'Straight length at base temperature', value: figures.length * 1000, ...mm, formula: 'L × [1 + α (Tb − Tm)]', from: ['α', 'Tb', 'Tm'], clause }),
      ...survey.ends.map((end, i) => shownLine({ symbol: `a${i + 1}`, name: `End ${i + 1}, ${end.kind}: depth`, value: (figures.depths[i] ?? 0) * 1000, ...mm, formula: end.kind === 'torispherical' ? 'rc − √[(rc − rk)² − (R − rk)²]' : 'as measured, at base temperature', from: [], clause: 'MPMS-2.2E heads' })),
    ]),
    shownLine({ symbol: 'Vopen', name: 'Volume of the whole vessel', value: figures.full, unit: 'm3', decimals: 4, formula: sphere ? 'π h² (3r − h) / 3' : 'A(h) × l + V end 1 + V end 2', from: ['r'], clause }),
    shownLine({ symbol: 'Vdead', name: 'Room that deadwood takes', value: figures.taken, unit: 'm3', decimals: 4, formula: 'Σ volume × part below the level', from: [], clause: 'MPMS-2.2A deadwood' }),
  ]
}
