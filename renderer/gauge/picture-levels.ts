import { convertVolume, Decimal, degC, millimetres, parseLength, parseTemperature, parseVolume, type Decimal as Millimetres } from '../../core/units/index.ts'
import { criticalZoneOf, levelAtVolume, type Tank } from '../../core/tank/index.ts'
import type { GaugeForm } from './gauge-form.ts'
import { vesselFrame, type RoundShape, type VesselFrame } from './picture-vessel.ts'

/** What of a gauge can be drawn, as shares of the reference gauge height; undefined where nothing readable stands. */
export interface PictureLevels {
  readonly liquid: number | undefined
  readonly water: number | undefined
  /** From the bottom up; `warmth` runs from 0, the coldest, to 1, the warmest. */
  readonly spots: readonly { readonly at: number; readonly label: string; readonly warmth: number }[]
}

/** Reads what can be read of a half-filled sheet, for the picture only; whatever cannot be read is not drawn. */
export function pictureLevels(form: GaugeForm, tank: Tank): PictureLevels {
  const height = read(tank.referenceGaugeHeight)
  if (!height || height.isZero()) return { liquid: undefined, water: undefined, spots: [] }
  const share = (text: string): number | undefined => {
    const mm = read(text)
    return mm && within(mm.div(height).toNumber())
  }
  const typed = share(writtenLevel(form))
  return {
    liquid: typed !== undefined && form.levelBy === 'ullage' ? within(1 - typed) : typed,
    water: form.waterBy === 'volume' ? ofTable(form.waterVolume, tank, height) : share(form.waterCut),
    spots: profile(form, share),
  }
}

/** Where the top of a volume of water stands by the table. */
function ofTable(text: string, { capacityTable: table }: Tank, height: Millimetres): number | undefined {
  const volume = parseVolume(text, 'picture')
  if (!volume.ok || volume.value.value.isNegative()) return undefined
  const level = levelAtVolume(table, convertVolume(volume.value.value, volume.value.unit, table.volumeUnit), 'picture')
  return level.ok ? within(level.value.div(height).toNumber()) : undefined
}

/** The level as it stands on the sheet: the last of repeated readings where there are some. */
export function writtenLevel({ level, readings }: GaugeForm): string {
  return readings.at(-1)?.read ?? level
}

/** The free water as it stands on the sheet. */
export function writtenWater({ waterBy, waterCut, waterVolume }: GaugeForm): string {
  return waterBy === 'volume' ? waterVolume : waterCut
}

/** Spots from the bottom up, each with how warm it is among the others. */
function profile({ spots }: GaugeForm, share: (text: string) => number | undefined): PictureLevels['spots'] {
  const read = spots.flatMap(({ level, temperature }) => {
    const [at, value] = [share(level), parseTemperature(temperature, 'picture')]
    return at === undefined || !value.ok ? [] : [{ at, label: temperature, value: degC(value.value) }]
  }).sort((a, b) => a.at - b.at)
  const [coldest, warmest] = [Math.min(...read.map(({ value }) => value)), Math.max(...read.map(({ value }) => value))]
  return read.map(({ at, label, value }) => ({ at, label, warmth: warmest === coldest ? 0 : (value - coldest) / (warmest - coldest) }))
}

/** The critical zone of a floating roof, as its legs stand, as shares of the reference gauge height. */
export function criticalZone(tank: Tank): { readonly from: number; readonly to: number } | undefined {
  const height = read(tank.referenceGaugeHeight)
  if (tank.roof.kind === 'none' || !height || height.isZero()) return undefined
  const zone = criticalZoneOf(tank.roof)
  return zone.ok ? { from: zone.value.from.div(height).toNumber(), to: zone.value.to.div(height).toNumber() } : undefined
}

/**
 * Where the crown of a sphere or lying cylinder stands, as a share of the reference gauge height: at the last level of its
 * table; of a table that ends far below the hatch no crown can be told, and 0.6 is drawn. An upright tank: 1.
 */
export function crownShare(tank: Tank): number {
  const height = read(tank.referenceGaugeHeight)
  if ((tank.shape ?? 'upright-cylinder') === 'upright-cylinder' || !height || height.isZero()) return 1
  const last = new Decimal(tank.capacityTable.rows.at(-1)?.[0] ?? 0)
  return Math.min(1, Math.max(0.6, last.div(height).toNumber()))
}

/** Walls of a round tank in the picture, and the ground that it stands on. */
export const ROUND = { left: 24, right: 184, ground: 406 } as const
const CLEAR: { readonly [S in RoundShape]: number } = { sphere: 26, 'horizontal-cylinder': 18 }

/** A round tank as the picture shows it, with its scale. */
export function roundFrame(tank: Tank, shape: RoundShape): VesselFrame {
  return vesselFrame(shape, crownShare(tank), { ...ROUND, clear: CLEAR[shape] })
}

function read(text: string): Millimetres | undefined {
  if (text.trim() === '') return undefined
  const length = parseLength(text, 'picture')
  return length.ok ? new Decimal(millimetres(length.value)) : undefined
}

function within(share: number): number | undefined {
  return share >= 0 && share <= 1.02 ? share : undefined
}
