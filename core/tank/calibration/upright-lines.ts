import type { WorksheetLine } from '../../worksheet/index.ts'
import { shownLine } from './survey-lines.ts'
import type { UprightSurvey } from './survey.ts'
import { uprightVolume, type UprightCylinder } from './upright-volume.ts'

/** Lines of what makes up the volume at the highest level: shell, head, bottom, deadwood, lean. */
export function uprightLines(survey: UprightSurvey, tank: UprightCylinder, top: number, roofVolume: number): readonly WorksheetLine[] {
  const parts = uprightVolume(tank, top)
  const volume = { unit: 'm3', decimals: 4 } as const
  const courses = tank.courses.map((_, i) => `r${i + 1}`)
  const others = -parts.deadwood - roofVolume
  return [
    shownLine({ symbol: 'Vshell', name: 'Open capacity of the shell at the highest level', value: parts.shell, ...volume, formula: 'Σ π r² Δz', from: courses, clause: 'MPMS-2.2A open capacity', notes: tiltNotes(tank) }),
    shownLine({ symbol: 'Vhead', name: 'Stretch of the shell under the head of liquid, at the highest level', value: parts.head, ...volume, formula: survey.head === undefined ? '0' : 'Σ 2π ρ g r³ / (E t) ∫ (z − s) ds', from: courses, clause: 'MPMS-2.2A liquid head', notes: survey.head === undefined ? ['no head was entered: the table is for an unstressed shell'] : [`ρ = ${survey.head.density}, E = ${survey.head.modulus}, g = 9.80665 m/s²`] }),
    shownLine({ symbol: 'Vbottom', name: `What the bottom changes, ${survey.bottom.kind}`, value: parts.bottom, ...volume, formula: survey.bottom.kind === 'flat' ? '0' : '∫ 2πr [(z − b)⁺ − z⁺] dr', from: ['r1'], clause: 'MPMS-2.2A bottom volume', notes: ['against a flat bottom at the corner of the shell'] }),
    shownLine({ symbol: 'Vdead', name: 'Room that deadwood takes, at the highest level', value: others, ...volume, formula: 'Σ volume × part below the level', from: [], clause: 'MPMS-2.2A deadwood', notes: survey.deadwood.map((one) => `${one.name}: ${one.counts} ${one.volume}, ${one.from} to ${one.to}`) }),
    ...(survey.roof === undefined ? [] : [shownLine({ symbol: 'Vroof', name: 'Room that the floating roof takes, graded over its critical zone', value: roofVolume, ...volume, formula: 'Wr / D', from: [], clause: 'MPMS-12.1.1 floating roof adjustment', notes: [`Wr = ${survey.roof.mass}, D = ${survey.roof.densityInAir} in air, ${survey.roof.from} to ${survey.roof.to}`] })]),
  ]
}

function tiltNotes({ tilt }: UprightCylinder): readonly string[] {
  if (tilt === undefined) return []
  const lean = Math.hypot(1, tilt.ratio)
  return [
    tilt.dips === 'plumb' ? `leaning: length along the shell = dip × √(1 + m²) = dip × ${lean}, geometry` : 'leaning: dips along the shell need no correction of length',
    tilt.circumferences === 'level' ? `leaning: areas × 1 / √(1 + m²), since the tape was led level all round` : 'leaning: circumferences square to the axis need no correction of area',
  ]
}
