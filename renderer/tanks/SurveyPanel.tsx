import { useState, type ReactNode } from 'react'
import { SHELL_MATERIALS, TANK_SHAPES, type CapacityTable, type ShellMaterial, type TankShape } from '../../core/tank/index.ts'
import { VOLUME_UNITS } from '../../core/units/index.ts'
import { FaultInMain, RefusedByMain } from '../bridge/bridge.ts'
import { useAction } from '../bridge/use-operation.ts'
import { placeFindings } from '../parts/place-findings.ts'
import { SheetPanel } from '../parts/SheetPanel.tsx'
import { words } from '../words/en.ts'
import { DeadwoodRows } from './DeadwoodRows.tsx'
import { OneOf } from './OneOf.tsx'
import { surveyForm, surveyOf, surveyPlaces } from './survey-form.ts'
import { SurveyText, type SurveyPart } from './SurveyText.tsx'
import { SurveyUpright } from './SurveyUpright.tsx'
import { SurveyVessel } from './SurveyVessel.tsx'
import './survey.css'

interface SurveyPanelProps { readonly shape: TankShape; readonly shellMaterial: ShellMaterial; readonly open: boolean; readonly onClose: () => void; readonly onTable: (table: CapacityTable) => void }

/** A capacity table computed from what was measured at the tank. */
export function SurveyPanel(props: SurveyPanelProps): ReactNode {
  return props.open ? <SurveySheet {...props} /> : null
}

const LEVEL_UNITS = ['mm', 'cm', 'm', 'ft-in', 'in', 'ft'] as const

function SurveySheet({ shape, shellMaterial, open, onClose, onTable }: SurveyPanelProps): ReactNode {
  const t = words.tables.survey
  const [form, setForm] = useState(() => surveyForm(shape, shellMaterial))
  const [state, run] = useAction('compute-capacity-table')
  const placed = placeFindings(state.state === 'failed' && state.error instanceof RefusedByMain ? state.error.findings : [], surveyPlaces(form))
  const part: SurveyPart = { form, errors: placed.errors, set: (change) => setForm((before) => ({ ...before, ...change })) }
  const submit = async (): Promise<void> => {
    const table = await run({ survey: surveyOf(form) })
    if (table) onTable(table)
  }
  return (
    <SheetPanel
      title={t.title} open={open} onClose={onClose} width={860} submit={t.submit} onSubmit={() => void submit()} busy={state.state === 'running'}
      others={placed.others} fault={state.state === 'failed' && state.error instanceof FaultInMain ? state.error : undefined} says={<><p>{t.says}</p><p>{t.caution}</p></>}
    >
      <h2>{t.certificateSection}</h2>
      <div className="sheet-row">
        <SurveyText part={part} field="certificate" path="certificate" label={t.certificate} />
        <SurveyText part={part} field="issuedBy" path="issuedBy" label={t.issuedBy} />
        <SurveyText part={part} field="issuedOn" path="issuedOn" label={t.issuedOn} hint={t.issuedHint} />
        <SurveyText part={part} field="revision" path="revision" label={t.revision} />
      </div>
      <h2>{t.temperatures}</h2>
      <div className="sheet-row">
        <OneOf id="survey-shape" label={t.shape} value={form.shape} of={TANK_SHAPES} say={(one) => words.tables.shapes[one]} onChange={(chosen) => part.set({ shape: chosen })} />
        <OneOf id="survey-shellMaterial" label={t.shellMaterial} value={form.shellMaterial} of={SHELL_MATERIALS} say={(one) => words.yard.materials[one]} onChange={(chosen) => part.set({ shellMaterial: chosen })} />
        <SurveyText part={part} field="baseTemperature" path="baseTemperature" label={t.baseTemperature} hint="15 degC" />
        <SurveyText part={part} field="measuredAt" path="measuredAt" label={t.measuredAt} hint="22 degC" />
      </div>
      <div className="sheet-row">
        <OneOf id="survey-volumeUnit" label={t.volumeUnit} value={form.volumeUnit} of={VOLUME_UNITS} say={(one) => one} onChange={(chosen) => part.set({ volumeUnit: chosen })} />
        <OneOf id="survey-levelUnit" label={t.levelUnit} value={form.levelUnit} of={LEVEL_UNITS} say={(one) => one} onChange={(chosen) => part.set({ levelUnit: chosen })} />
        <SurveyText part={part} field="step" path="step" label={t.step} hint="10 mm" />
      </div>
      {form.shape === 'upright-cylinder' ? <SurveyUpright part={part} /> : <SurveyVessel part={part} />}
      <DeadwoodRows part={part} />
    </SheetPanel>
  )
}
