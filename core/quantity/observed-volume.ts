import type { FreeWater, GaugeSnapshot, ParsedSnapshot } from '../gauge/index.ts'
import { accepted, allOf, andThen, refused, type Finding, type Outcome } from '../refusal/index.ts'
import { discriminate, type Rounded } from '../rounding/index.ts'
import { criticalZoneOf, roofAt, volumeAtLevel, type CapacityTable, type RoofFound, type RoofPosition, type TableReading, type Tank } from '../tank/index.ts'
import { convertVolume, Decimal, millimetres, parseLength, type VolumeUnit } from '../units/index.ts'
import { roundedLine, type WorksheetLine } from '../worksheet/index.ts'

/** What the capacity table says of a snapshot, and where the roof is. */
export interface Observed {
  readonly total: TableReading
  /** Null where no water was found, which is no volume, whatever the table holds at its first row; and where its volume was entered. */
  readonly water: TableReading | null
  readonly roof: RoofPosition
  /** Level above datum [mm]. */
  readonly levelMm: Decimal
  /** What was allowed but has to be printed. */
  readonly exceptions: readonly Finding[]
}

/**
 * Looks up the level and the water cut, where the water was not entered as a volume, in the capacity table, and the level against the critical zone. Water is taken
 * off as a volume out of the same table, never as a length off the level. All findings at once.
 * A level in the critical zone with its reason, and a cut above the tank's usual one, are exceptions.
 * Refuses `level-outside-table`, `roof-in-critical-zone`; `out-of-range` for water above the level where the table begins
 * to deduct the roof, since its volumes are not those of the water there.
 * @param levelMm level above datum [mm]
 * @param water a cut or a volume; undefined where it was refused
 * @param path of the snapshot
 * @param reason why a gauge inside the critical zone is booked all the same
 * @source MPMS-12.1.1 total observed volume, free water
 * @checked VOL-NOT-INCHES
 */
export function observe(tank: Tank, levelMm: Decimal, water: FreeWater | undefined, path: string, reason?: string): Outcome<Observed> {
  const table = tank.capacityTable
  const read = allOf<{ total: TableReading; water: TableReading | null; roof: RoofFound; usual: readonly Finding[] }>({
    total: volumeAtLevel(table, levelMm, `${path}.level`),
    water: water?.by === 'cut' ? waterVolume(tank, water.mm, `${path}.waterCut`) : accepted(null),
    roof: roofAt(tank.roof, levelMm, `${path}.level`, reason),
    usual: aboveUsual(tank, water, path),
  })
  return andThen(read, ({ total, water: cut, roof, usual }) => accepted({ total, water: cut, roof: roof.position, levelMm, exceptions: [...roof.exceptions, ...usual] }))
}

function aboveUsual({ usualWaterCut }: Tank, water: FreeWater | undefined, path: string): Outcome<readonly Finding[]> {
  if (usualWaterCut === undefined || water === undefined) return accepted([])
  const found = water.by === 'cut' ? { path: `${path}.waterCut`, value: `${water.mm.toFixed()} mm` } : { path: `${path}.waterVolume`, value: `${water.volume.text}, ${water.mm.toFixed()} mm by the table` }
  return andThen(parseLength(usualWaterCut, 'tank.usualWaterCut'), (usual) => accepted(water.mm.gt(millimetres(usual))
    ? [{ code: 'water-above-usual', ...found, limit: usualWaterCut, clause: 'HOUSE tank' }] : []))
}

function waterVolume(tank: Tank, cutMm: Decimal, path: string): Outcome<TableReading | null> {
  if (cutMm.isZero()) return accepted(null)
  if (tank.roof.kind !== 'none' && tank.roof.inTable) {
    const zone = criticalZoneOf(tank.roof)
    if (zone.ok && cutMm.gt(zone.value.from)) {
      return refused({ code: 'out-of-range', path, value: `${cutMm.toFixed()} mm`, limit: `at most ${tank.roof.criticalZone.from}, where the capacity table begins to deduct the roof`, clause: 'MPMS-12.1.1 free water' })
    }
  }
  return volumeAtLevel(tank.capacityTable, cutMm, path)
}

/** How the cut was found, where it was not by gauge. */
const WATER_BY: { readonly [B in NonNullable<GaugeSnapshot['waterBy']>]: string } = { gauge: '', probe: ', found by the probe', entered: ', entered, not gauged' }

/** Total observed volume and free water, each rounded once in the product's unit, with their lines. */
export function observedLines(observed: Observed, read: ParsedSnapshot, table: CapacityTable, unit: VolumeUnit, waterBy: GaugeSnapshot['waterBy'] = 'gauge'): { readonly tov: Rounded; readonly fw: Rounded; readonly lines: readonly WorksheetLine[] } {
  const volume = (reading: TableReading | null): Rounded =>
    discriminate(`volume ${unit}`, convertVolume(reading?.volume ?? new Decimal(0), table.volumeUnit, unit))
  const tov = volume(observed.total)
  const { water } = read
  const fw = water.by === 'volume' ? discriminate(`volume ${unit}`, convertVolume(water.volume.value, water.volume.unit, unit)) : volume(observed.water)
  return {
    tov, fw,
    lines: [
      roundedLine({ symbol: 'TOV', name: 'Total observed volume', unit, formula: 'V1 + (L − L1) / (L2 − L1) × (V2 − V1)', clause: 'MPMS-12.1.1 total observed volume', from: ['L'], rounded: tov, notes: notesOn(observed.total, table, unit) }),
      roundedLine({ symbol: 'FW', name: 'Free water', unit, clause: 'MPMS-12.1.1 free water', rounded: fw, ...howFound(observed.water, water, table, unit, waterBy) }),
    ],
  }
}

/** Formula, inputs and notes of the free water: entered, none, or out of the table. */
function howFound(reading: TableReading | null, water: FreeWater, table: CapacityTable, unit: VolumeUnit, waterBy: NonNullable<GaugeSnapshot['waterBy']>): { readonly formula: string; readonly from: readonly string[]; readonly notes: readonly string[] } {
  if (water.by === 'volume') return { formula: 'FWe', from: ['FWe'], notes: [`entered, not gauged: ${water.origin}`, ...(water.volume.unit === unit ? [] : [`converted exactly from ${water.volume.unit} to ${unit} before rounding`])] }
  if (reading === null) return { formula: '0', from: ['WC'], notes: ['no water was found above the datum'] }
  return { formula: 'V1 + (WC − L1) / (L2 − L1) × (V2 − V1)', from: ['WC'], notes: [...notesOn(reading, table, unit), `${water.mm.toFixed()} mm of water${WATER_BY[waterBy]}`] }
}

function notesOn({ lower, upper }: TableReading, table: CapacityTable, unit: VolumeUnit): readonly string[] {
  const rows = `L1 = ${lower.level.toFixed()} mm, V1 = ${lower.volume.toFixed()} ${table.volumeUnit}; L2 = ${upper.level.toFixed()} mm, V2 = ${upper.volume.toFixed()} ${table.volumeUnit}; certificate ${table.certificate}`
  return table.volumeUnit === unit ? [rows] : [rows, `converted exactly from ${table.volumeUnit} to ${unit} before rounding`]
}
