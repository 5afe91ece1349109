import type { OutputOf } from '../../main/operations/contracts/index.ts'
import { localTime } from '../parts/local-time.ts'
import { words } from '../words/en.ts'
import { gigabytes } from './backup-words.ts'

/** A line of the page's head: what, and how it stands. */
export interface StorageFact { readonly name: string; readonly value: string; readonly wrong?: true; readonly large?: true }

/** Where the ledger is, and what opens at the next start. */
export function placeFacts({ kind, place, version, chosenBy, setting, reachable, trouble, room, clock }: OutputOf<'storage'>): readonly StorageFact[] {
  const t = words.storage.facts
  const next = chosenBy === 'start' ? t.namedByStart : setting === null ? (chosenBy === 'folder' ? t.sameNext : t.fileNext) : setting === place ? t.sameNext : setting
  return [
    { name: t.ledger, value: t.keptIn(words.storage.kinds[kind], version) }, { name: t.place, value: place }, { name: t.next, value: next },
    ...(reachable ? [] : [{ name: t.unreachable, value: trouble, wrong: true } as const]),
    ...(room === null ? [] : [{ name: t.room, value: (room.enough ? t.isFree : t.isScarce)(gigabytes(room.free), gigabytes(room.advised)), ...wrongIf(!room.enough) }]),
    ...(clock === null ? [] : [{ name: t.clock, value: clock.agrees ? t.clockAgrees : t.clockDiffers(clock.aheadSeconds), ...wrongIf(!clock.agrees) }]),
  ]
}

/** Where backups go, the last one and the next. */
export function backupFacts({ rules, running, last, due, failed }: OutputOf<'backup-state'>, now: string, zone: string): readonly StorageFact[] {
  const t = words.storage.facts
  if (rules === null) return [{ name: t.backups, value: t.noRules, wrong: true }]
  const { everyHours, keep } = rules
  return [
    { name: t.last, value: last === null ? t.noneYet : t.lastIs(minuteOf(last.at, zone), last.entries), large: true, ...(last === null ? { wrong: true } : {}) },
    { name: t.folder, value: rules.folder },
    { name: t.rule, value: words.storage.rule(everyHours, keep.last, keep.days, keep.weeks, keep.months) },
    { name: t.due, value: running ? t.running : due === null ? t.onDemand : due <= now ? t.overdue(minuteOf(due, zone)) : minuteOf(due, zone) },
    ...(failed === null ? [] : [{ name: t.failed, value: t.failedAt(minuteOf(failed.at, zone), failed.message), wrong: true } as const]),
  ]
}

function wrongIf(wrong: boolean): { readonly wrong?: true } {
  return wrong ? { wrong } : {}
}

function minuteOf(instant: string, zone: string): string {
  return localTime(instant, zone).slice(0, 16)
}
