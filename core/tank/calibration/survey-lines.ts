import { display } from '../../rounding/index.ts'
import type { Citation } from '../../sources.ts'
import { Decimal } from '../../units/index.ts'
import { inputLine, type WorksheetLine } from '../../worksheet/index.ts'
import { SHELL_EXPANSION } from '../shell.ts'
import type { CommonSurvey } from './survey-common.ts'
import type { TankSurvey } from './survey.ts'

interface Shown { readonly symbol: string; readonly name: string; readonly unit: string; readonly value: number; readonly decimals: number; readonly formula: string; readonly from: readonly string[]; readonly clause: Citation; readonly notes?: readonly string[] }

/** A line of the certificate: shown with so many decimals, computed on with all its digits. */
export function shownLine({ value, decimals, from, notes = [], ...words }: Shown): WorksheetLine {
  return { ...words, value: display(value, decimals), unrounded: new Decimal(value).toFixed(), rounding: 'shown so; the next lines take all digits', from: [...from], notes: [...notes] }
}

/** Lines that begin every certificate of a computed table: temperatures, expansion. */
export function commonLines(survey: TankSurvey, common: CommonSurvey): readonly WorksheetLine[] {
  const { clause, note } = SHELL_EXPANSION[survey.shellMaterial]
  return [
    inputLine({ symbol: 'Tb', name: 'Base temperature of the table', value: common.base.value.toFixed(), unit: common.base.unit, clause: 'MPMS-2.2A capacity table' }),
    inputLine({ symbol: 'Tm', name: 'Temperature of the shell when it was measured', value: common.measured.value.toFixed(), unit: common.measured.unit, clause: 'MPMS-2.2A measurement', notes: common.measured.unit === common.base.unit ? [] : [`taken in ${common.base.unit}`] }),
    inputLine({ symbol: 'α', name: `Linear expansion of the shell, ${survey.shellMaterial}`, value: new Decimal(common.alpha).toFixed(), unit: `/${common.base.unit}`, clause, notes: note === '' ? [] : [note] }),
  ]
}
