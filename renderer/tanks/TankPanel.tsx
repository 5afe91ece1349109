import { useState, type ReactNode } from 'react'
import { SHELL_MATERIALS, TANK_SHAPES, type ShellMaterial, type Tank } from '../../core/tank/index.ts'
import { useTerminal } from '../app/TerminalContext.tsx'
import { FaultInMain, RefusedByMain } from '../bridge/bridge.ts'
import { useAction } from '../bridge/use-operation.ts'
import { usualUnits, withUsualUnit, type WrittenKind } from '../gauge/usual-units.ts'
import { SelectField, TextField } from '../parts/Field.tsx'
import { placeFindings } from '../parts/place-findings.ts'
import { SheetPanel } from '../parts/SheetPanel.tsx'
import { words } from '../words/en.ts'
import { EffectiveFields } from './EffectiveFields.tsx'
import { OneOf } from './OneOf.tsx'
import { RoofFields } from './RoofFields.tsx'
import { TableFile } from './TableFile.tsx'
import { TANK_PLACES, tankForm, tankOf, type TankForm } from './tank-form.ts'
import { useEffective } from './use-effective.ts'
import { YES_NO } from './yes-no.ts'

interface TankPanelProps { readonly tank: Tank | undefined; readonly open: boolean; readonly onClose: () => void; readonly onEntered: () => void }

/** A new tank, or a new version of one. */
export function TankPanel(props: TankPanelProps): ReactNode {
  return props.open ? <TankSheet {...props} /> : null
}

function TankSheet({ tank, open, onClose, onEntered }: TankPanelProps): ReactNode {
  const t = words.yard.tankForm
  const { now } = useTerminal()
  const [form, setForm] = useState(() => tankForm(tank))
  const effective = useEffective()
  const [state, run] = useAction('set-tank')
  const placed = placeFindings(state.state === 'failed' && state.error instanceof RefusedByMain ? state.error.findings : [], TANK_PLACES)
  const described = tankOf(form)
  const units = usualUnits(described, now.products.find(({ code }) => code === form.product))
  const set = (change: Partial<TankForm>): void => setForm((before) => ({ ...before, ...change }))
  const submit = async (): Promise<void> => {
    if (described && effective.ready && (await run({ tank: described, ...effective.ready }))) onEntered()
  }
  const error = (id: string): string | undefined => placed.errors.get(id)
  const measured = (field: 'referenceGaugeHeight' | 'referenceHeightTolerance' | 'usualWaterCut', id: string, label: string, kind: WrittenKind): ReactNode => (
    <TextField id={id} label={label} measured value={form[field]} onChange={(value) => set({ [field]: value })} onBlur={() => set({ [field]: withUsualUnit(form[field], kind, units) })} error={error(id)} />
  )
  return (
    <SheetPanel
      title={tank ? t.title(tank.code) : t.newTitle} open={open} onClose={onClose} width={720} does="set-tank" state={state} submit={t.submit} onSubmit={() => void submit()} busy={state.state === 'running'} ready={described !== undefined && effective.ready !== undefined}
      others={placed.others} fault={state.state === 'failed' && state.error instanceof FaultInMain ? state.error : undefined} says={<p>{t.says}</p>}
    >
      <div className="sheet-row">
        <TextField id="tank-code" label={t.code} value={form.code} disabled={tank !== undefined} onChange={(code) => set({ code: code.toUpperCase() })} error={error('tank-code')} />
        <TextField id="tank-name" label={t.name} value={form.name} onChange={(name) => set({ name })} error={error('tank-name')} />
        <SelectField id="tank-product" label={t.product} value={form.product} placeholder={t.choose} choices={now.products.map(({ code, name }) => ({ value: code, label: name }))} onChange={(product) => set({ product })} error={error('tank-product')} />
      </div>
      <div className="sheet-row">
        <OneOf id="tank-shape" label={t.shape} value={form.shape} of={TANK_SHAPES} say={(one) => words.tables.shapes[one]} onChange={(shape) => set({ shape, ...(shape === 'upright-cylinder' ? {} : { roof: 'none' }) })} />
        <SelectField id="tank-shell" label={t.shellMaterial} value={form.shellMaterial} choices={SHELL_MATERIALS.map((value) => ({ value, label: words.yard.materials[value] }))} onChange={(value) => set({ shellMaterial: materialNamed(value) })} />
        <SelectField id="tank-insulated" label={t.insulated} value={String(form.insulated)} choices={YES_NO} onChange={(value) => set({ insulated: value === 'true' })} />
        {measured('referenceGaugeHeight', 'tank-reference', t.referenceGaugeHeight, 'level')}
        {measured('referenceHeightTolerance', 'tank-tolerance', t.tolerance, 'cut')}
      </div>
      <div className="sheet-row">
        <TextField id="tank-datum" label={t.datum} value={form.datum} placeholder={t.datumHint} onChange={(datum) => set({ datum })} error={error('tank-datum')} />
        {measured('usualWaterCut', 'tank-usual-cut', t.usualWaterCut, 'cut')}
      </div>
      {form.shape === 'upright-cylinder' && <RoofFields form={form} units={units} onChange={set} errors={placed.errors} />}
      <TableFile table={form.table} shape={form.shape} shellMaterial={form.shellMaterial} inForce={tank?.capacityTable} onTable={(table) => set({ table })} error={error('tank-table')} />
      <EffectiveFields effective={effective} ids={{ from: 'tank-from', by: 'tank-by' }} errors={placed.errors} />
    </SheetPanel>
  )
}

function materialNamed(value: string): ShellMaterial {
  return SHELL_MATERIALS.find((material) => material === value) ?? 'mild-carbon-steel'
}
