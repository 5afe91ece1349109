import { canonicalJson } from './canonical-json.ts'

/** An entry as it is written down: its body as canonical JSON, and where it comes in the chain. */
export interface WrittenEntry {
  readonly seq: number; readonly kind: string; readonly at: string; readonly by: string
  /** Canonical JSON of the body. */
  readonly body: string
  /** Canonical JSON of the origin; absent where the entry names none. */
  readonly origin?: string | null | undefined
  /** Hash of the entry before. */
  readonly previous: string
}

/**
 * The one text that is hashed for an entry: its canonical JSON without `hash`, put together from parts that are
 * canonical already. Keys stand in the order of RFC 8785; `origin` only where there is one.
 * Throws on a text with a lone surrogate, which has no UTF-8.
 * @param entry the entry as it is written down; its body and origin are taken as they stand
 * @source RFC-8785 3.2
 */
export function entryText(entry: WrittenEntry): string {
  const [before, after] = textAroundBody(entry)
  return before + entry.body + after + placeText(entry)
}

/** What stands before and after the body in {@link entryText}, up to its place in the chain. */
export function textAroundBody({ kind, at, by, origin }: Pick<WrittenEntry, 'kind' | 'at' | 'by' | 'origin'>): readonly [before: string, after: string] {
  const from = origin === undefined || origin === null ? '' : `"origin":${origin},`
  return [`{"at":${canonicalJson(at)},"body":`, `,"by":${canonicalJson(by)},"kind":${canonicalJson(kind)},${from}`]
}

/** The end of {@link entryText}: the place in the chain. */
export function placeText({ previous, seq }: Pick<WrittenEntry, 'previous' | 'seq'>): string {
  return `"previous":${canonicalJson(previous)},"seq":${seq}}`
}
