import { accepted, allOf, andThen, refused, type Finding, type Outcome } from '../refusal/index.ts'
import { discriminate } from '../rounding/index.ts'
import { levelAtVolume, volumeAtLevel, type CapacityTable } from '../tank/index.ts'
import { convertVolume, millimetres, parseVolume, type Decimal, type Length, type Volume } from '../units/index.ts'
import { notNegative } from './level-reading.ts'
import type { GaugeSnapshot } from './snapshot.ts'

/**
 * Free water below the product: a cut, or a volume that was entered with where it is from. `mm` is its top above datum: the
 * cut itself, or the level to which the table holds the volume, which says where the product begins and nothing else.
 */
export type FreeWater =
  | { readonly by: 'cut'; readonly length: Length; readonly mm: Decimal }
  | { readonly by: 'volume'; readonly volume: Volume; readonly origin: string; readonly mm: Decimal }

const CLAUSE = 'MPMS-3.1A free water'

/**
 * The free water of a snapshot, by its cut or by its volume, one of the two. No more of it than stands in the tank.
 * Refuses `missing-value`, `value-not-used` (both, or how a cut was found beside a volume), `water-above-level`,
 * `out-of-range` and unreadable texts.
 * @param snapshot with a cut or a volume
 * @param levelMm level above datum [mm]; undefined where the level itself was refused
 * @param table of the tank
 * @param path of the snapshot
 * @source MPMS-3.1A free water
 */
export function freeWater({ waterCut: cut, waterVolume: entered, waterBy }: GaugeSnapshot, levelMm: Decimal | undefined, table: CapacityTable, path: string): Outcome<FreeWater> {
  if (entered === undefined) {
    if (cut === undefined) return refused({ code: 'missing-value', path: `${path}.waterCut`, value: '', limit: 'a water cut, 0 mm where no water was found, or the volume of the water and where it is from', clause: CLAUSE })
    return waterCut(cut, levelMm, `${path}.waterCut`)
  }
  const findings: Finding[] = [
    ...(cut === undefined ? [] : [{ code: 'value-not-used', path: `${path}.waterVolume`, value: entered.volume, limit: `the water was cut at ${cut}; leave one of the two out`, clause: CLAUSE } as const]),
    ...(waterBy === undefined ? [] : [{ code: 'value-not-used', path: `${path}.waterBy`, value: waterBy, limit: 'a volume of water says itself where it is from', clause: CLAUSE } as const]),
    ...(entered.origin.trim() === '' ? [{ code: 'missing-value', path: `${path}.waterVolume.origin`, value: '', limit: 'where the volume of the water is from', clause: CLAUSE } as const] : []),
  ]
  const read = allOf<{ water: FreeWater; together: null }>({
    water: enteredVolume(entered, levelMm, table, `${path}.waterVolume.volume`), together: findings.length > 0 ? refused(...findings) : accepted(null),
  })
  return andThen(read, ({ water }) => accepted(water))
}

function waterCut(text: string, levelMm: Decimal | undefined, path: string): Outcome<FreeWater> {
  return andThen(notNegative(text, path), (length) => {
    const mm = millimetres(length)
    if (levelMm === undefined || mm.lte(levelMm)) return accepted({ by: 'cut', length, mm })
    return refused({ code: 'water-above-level', path, value: text, limit: `${levelMm.toFixed()} mm`, clause: CLAUSE })
  })
}

function enteredVolume({ volume: text, origin }: NonNullable<GaugeSnapshot['waterVolume']>, levelMm: Decimal | undefined, table: CapacityTable, path: string): Outcome<FreeWater> {
  return andThen(parseVolume(text, path), (volume) => {
    const finding = (limit: string): Outcome<FreeWater> => refused({ code: 'out-of-range', path, value: text, limit, clause: CLAUSE })
    if (volume.value.isNegative() && !volume.value.isZero()) return finding('0 or more')
    const inTable = convertVolume(volume.value, volume.unit, table.volumeUnit)
    const full = levelMm === undefined ? undefined : volumeAtLevel(table, levelMm, path)
    if (full?.ok === true && inTable.gt(full.value.volume)) return finding(`at most ${full.value.volume.toFixed()} ${table.volumeUnit}, all that stands in the tank`)
    // a level outside the table is refused with the level
    return andThen(levelAtVolume(table, inTable, path), (mm) => accepted({ by: 'volume', volume, origin: origin.trim(), mm: discriminate('level uncertainty mm', mm).value }))
  })
}
