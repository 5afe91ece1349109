import { accepted, andThen, refused, type Outcome } from '../../refusal/index.ts'
import { discriminate } from '../../rounding/index.ts'
import { convertVolume, Decimal } from '../../units/index.ts'
import { exceptionFrom, roundedLine, type WorksheetLine } from '../../worksheet/index.ts'
import { checkCapacityTable } from '../check-capacity-table.ts'
import { jumpFinding, tableJumps, USUAL_JUMP_SHARE } from '../table-jumps.ts'
import type { CapacityTable, TankBottom } from '../tank.ts'
import { readRound } from './read-round.ts'
import { readUpright } from './read-upright.ts'
import { commonLines } from './survey-lines.ts'
import type { TankSurvey, UprightSurvey } from './survey.ts'
import { tableLevels } from './table-levels.ts'
import { uprightLines } from './upright-lines.ts'
import { uprightVolume } from './upright-volume.ts'

const MOST_ROWS = 100_000
const MOST_NOTICED = 50

/** Volume at a level, the highest level and where the volume bends [m, m³], and the lines that say how. */
interface Computed {
  readonly volumeAt: (level: number) => number
  readonly top: number
  readonly bends: readonly number[]
  readonly step: Decimal
  readonly bottom: TankBottom | undefined
  readonly lines: readonly WorksheetLine[]
}

/**
 * A capacity table from what was measured at the tank, with every step named: circumferences or radii to inside radii at
 * base temperature, open capacity, stretch under the head of liquid, bottom, deadwood, lean. Rows at every step and at
 * every level where the volume bends; volumes rounded once.
 * Refuses `out-of-range`, `value-not-used`, unreadable texts, `capacity-table-not-increasing`.
 * @param survey as the schema accepted it
 * @param path of the survey, for the findings
 * @source MPMS-2.2A capacity table
 * @source ISO-7507-1 construction of tables
 * @source MPMS-2.2E capacity table
 * @source API-2552 capacity table
 */
export function computeCapacityTable(survey: TankSurvey, path = 'survey'): Outcome<CapacityTable> {
  return andThen(survey.shape === 'upright-cylinder' ? computedUpright(survey, path) : readRound(survey, path), (computed) => tableOf(survey, computed, path))
}

function computedUpright(survey: UprightSurvey, path: string): Outcome<Computed> {
  return andThen(readUpright(survey, path), ({ tank, common, lines, roofVolume }) => {
    const plumb = tank.tilt?.dips === 'plumb' ? Math.hypot(1, tank.tilt.ratio) : 1
    const levelOf = (z: number): number => z / plumb - tank.datum
    const top = levelOf(tank.courses.at(-1)?.to ?? 0)
    const bends = [...tank.courses.map(({ to }) => levelOf(to)), ...tank.bottom.map(({ height }) => levelOf(height)), ...tank.deadwood.flatMap(({ from, to }) => [from, to])]
    const beyond = tank.deadwood.findIndex(({ to }) => to > top + 1e-9)
    if (beyond >= 0) {
      const named = survey.deadwood[beyond]
      return refused({ code: 'out-of-range', path: named === undefined ? `${path}.roof.to` : `${path}.deadwood.${beyond + 1}.to`, value: named?.to ?? survey.roof?.to ?? '', limit: 'not above the top of the shell', clause: 'MPMS-2.2A deadwood' })
    }
    return accepted({
      volumeAt: (level) => uprightVolume(tank, level).total, top, bends, step: common.step, bottom: survey.bottom.kind,
      lines: [...commonLines(survey, common), ...lines, ...uprightLines(survey, tank, top, roofVolume)],
    })
  })
}

function tableOf(survey: TankSurvey, { volumeAt, top, bends, step, bottom, lines }: Computed, path: string): Outcome<CapacityTable> {
  const unit = survey.volumeUnit
  if (new Decimal(top * 1000).div(step).gt(MOST_ROWS - 200)) return refused({ code: 'out-of-range', path: `${path}.step`, value: survey.step, limit: `a step that gives at most ${MOST_ROWS} rows`, clause: 'HOUSE capacity table' })
  if (top <= 0) return refused({ code: 'out-of-range', path: `${path}.datum`, value: survey.datum, limit: 'below the top of the tank', clause: 'HOUSE survey' })
  const volume = (cubicMetres: number) => discriminate(`volume ${unit}`, convertVolume(new Decimal(cubicMetres), 'm3', unit))
  const rows = tableLevels(step, top * 1000, bends).map((mm): [string, string] => [mm.toFixed(), volume(volumeAt(mm.toNumber() / 1000)).text])
  const heel = volume(volumeAt(0))
  const full = volume(volumeAt(top))
  const jumps = tableJumps(rows, Number.parseFloat(USUAL_JUMP_SHARE) / 100).slice(0, MOST_NOTICED)
  const table: CapacityTable = {
    certificate: survey.certificate, issuedBy: survey.issuedBy, issuedOn: survey.issuedOn, baseTemperature: survey.baseTemperature,
    volumeUnit: unit, levelUnit: survey.levelUnit, rows,
    ...(survey.revision === undefined ? {} : { revision: survey.revision }), ...(bottom === undefined ? {} : { bottom }), heel: `${heel.text} ${unit}`,
    ...(jumps.length === 0 ? {} : { noticed: jumps.map((jump) => exceptionFrom(jumpFinding(jump, USUAL_JUMP_SHARE, unit, `row ${jump.row + 1}`))) }),
    madeBy: [
      ...lines,
      roundedLine({ symbol: 'Vheel', name: 'Volume below the datum', unit, formula: 'V at level 0', from: [], rounded: heel }),
      roundedLine({ symbol: 'Vfull', name: 'Volume at the highest level', unit, formula: 'V at the highest level', from: [], rounded: full }),
    ],
  }
  return checkCapacityTable(table, `${path}.table`)
}
