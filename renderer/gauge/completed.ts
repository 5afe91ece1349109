import { kindOf } from './field-kinds.ts'
import { valueOf, withValue, type GaugeForm } from './gauge-form.ts'
import { linesOf } from './sheet-sections.ts'
import { withUsualUnit, type UsualUnits } from './usual-units.ts'

/** The sheet as it will stand once every field is left: bare numbers with their usual unit. */
export function completed(form: GaugeForm, units: UsualUnits): GaugeForm {
  return linesOf(form).reduce((sheet, line) => {
    const typed = valueOf(sheet, line)
    const full = withUsualUnit(typed, kindOf(line), units)
    return full === typed ? sheet : withValue(sheet, line, full)
  }, form)
}
