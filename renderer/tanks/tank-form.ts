import type { CapacityTable, Roof, ShellMaterial, Tank, TankShape } from '../../core/tank/index.ts'
import type { FieldPlace } from '../parts/place-findings.ts'
import { words } from '../words/en.ts'

type RoofKind = Roof['kind']

/** A tank as it is typed; the capacity table comes from a file. */
export interface TankForm {
  readonly code: string; readonly name: string; readonly product: string; readonly shape: TankShape; readonly shellMaterial: ShellMaterial; readonly insulated: boolean
  readonly datum: string; readonly referenceGaugeHeight: string; readonly referenceHeightTolerance: string
  readonly roof: RoofKind; readonly mass: string; readonly inTable: boolean; readonly referenceDensity: string; readonly printedAdjustment: string; readonly criticalFrom: string; readonly criticalTo: string
  readonly legs: 'none' | 'low' | 'high'; readonly legsLow: string; readonly legsHigh: string
  readonly usualWaterCut: string
  readonly table: CapacityTable | null
}

const EMPTY: TankForm = {
  code: '', name: '', product: '', shape: 'upright-cylinder', shellMaterial: 'mild-carbon-steel', insulated: false, datum: '', referenceGaugeHeight: '', referenceHeightTolerance: '',
  roof: 'none', mass: '', inTable: false, referenceDensity: '', printedAdjustment: '', criticalFrom: '', criticalTo: '', legs: 'none', legsLow: '', legsHigh: '', usualWaterCut: '', table: null,
}

/** A sheet for a new tank, or for a new version of one. */
export function tankForm(tank: Tank | undefined): TankForm {
  if (!tank) return EMPTY
  const { code, name, product, shellMaterial, insulated, datum, referenceGaugeHeight, referenceHeightTolerance, roof, capacityTable } = tank
  const common = { ...EMPTY, code, name, product, shellMaterial, insulated, datum, referenceGaugeHeight, referenceHeightTolerance, shape: tank.shape ?? 'upright-cylinder', usualWaterCut: tank.usualWaterCut ?? '', roof: roof.kind, table: capacityTable } satisfies TankForm
  if (roof.kind === 'none') return common
  return { ...common, mass: roof.mass, inTable: roof.inTable, referenceDensity: roof.referenceDensity ?? '', printedAdjustment: roof.printedAdjustment ?? '', criticalFrom: roof.criticalZone.from, criticalTo: roof.criticalZone.to, legs: roof.legs?.position ?? 'none', legsLow: roof.legs?.low ?? '', legsHigh: roof.legs?.high ?? '' }
}

/** The tank that a sheet describes, for the operation to judge; none without a capacity table. */
export function tankOf(form: TankForm): Tank | undefined {
  if (!form.table) return undefined
  const { code, name, product, shellMaterial, insulated, datum, referenceGaugeHeight, referenceHeightTolerance } = form
  return {
    code, name, product, ...(form.shape === 'upright-cylinder' ? {} : { shape: form.shape }), shellMaterial, insulated, datum, referenceGaugeHeight, referenceHeightTolerance, roof: roofOf(form),
    ...(form.usualWaterCut.trim() === '' ? {} : { usualWaterCut: form.usualWaterCut }), capacityTable: form.table,
  }
}

function roofOf(form: TankForm): Roof {
  if (form.roof === 'none') return { kind: 'none' }
  return {
    kind: form.roof, mass: form.mass, inTable: form.inTable, criticalZone: { from: form.criticalFrom, to: form.criticalTo },
    ...(form.inTable && form.referenceDensity.trim() !== '' ? { referenceDensity: form.referenceDensity } : {}),
    ...(form.legs === 'none' ? {} : { legs: { low: form.legsLow, high: form.legsHigh, position: form.legs } }),
    ...(form.inTable && form.printedAdjustment.trim() !== '' ? { printedAdjustment: form.printedAdjustment } : {}),
  }
}

const t = words.yard.tankForm

/** Where the findings of `set-tank` belong. */
export const TANK_PLACES: Readonly<Record<string, FieldPlace>> = {
  'tank.code': { id: 'tank-code', label: t.code }, 'tank.name': { id: 'tank-name', label: t.name }, 'tank.product': { id: 'tank-product', label: t.product },
  'tank.datum': { id: 'tank-datum', label: t.datum }, 'tank.referenceGaugeHeight': { id: 'tank-reference', label: t.referenceGaugeHeight }, 'tank.referenceHeightTolerance': { id: 'tank-tolerance', label: t.tolerance },
  'tank.roof.mass': { id: 'tank-mass', label: t.mass }, 'tank.roof.referenceDensity': { id: 'tank-roof-density', label: t.referenceDensity }, 'tank.roof.printedAdjustment': { id: 'tank-printed', label: t.printed },
  'tank.roof.criticalZone': { id: 'tank-critical-from', label: t.criticalFrom }, 'tank.roof.criticalZone.from': { id: 'tank-critical-from', label: t.criticalFrom }, 'tank.roof.criticalZone.to': { id: 'tank-critical-to', label: t.criticalTo },
  'tank.roof.legs.low': { id: 'tank-legs-low', label: words.tables.legs.lowHeight }, 'tank.roof.legs.high': { id: 'tank-legs-high', label: words.tables.legs.highHeight }, 'tank.usualWaterCut': { id: 'tank-usual-cut', label: t.usualWaterCut },
  'tank.roof': { id: 'tank-roof', label: t.roof }, 'tank.capacityTable': { id: 'tank-table', label: t.table }, effectiveFrom: { id: 'tank-from', label: t.effectiveFrom }, by: { id: 'tank-by', label: t.by },
}
