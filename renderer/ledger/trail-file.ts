import type { InputOf, OutputOf } from '../../main/operations/contracts/index.ts'
import { bytesOf } from '../parts/download.ts'

/** Rows asked for at once: some megabytes, however long the trail is. */
const ROWS = 20_000
const NEW_LINE = 10

type Asked = InputOf<'export-audit-trail'>
type Part = OutputOf<'export-audit-trail'>

/**
 * The whole audit trail under a filter as one file, asked for part after part from the newest back; the parts are handed to
 * the browser as they come.
 * @param ask gives a part, or undefined when it failed or was cancelled
 * @returns undefined when a part did not come: half a file is none
 */
export async function trailFile(ask: (input: Asked) => Promise<Part | undefined>, input: Omit<Asked, 'rows' | 'before'>): Promise<{ readonly name: string; readonly blob: Blob } | undefined> {
  const parts: Blob[] = []
  let name = ''
  for (let before: number | null | undefined; before !== null;) {
    const part: Part | undefined = await ask({ ...input, rows: ROWS, ...(before !== undefined && { before }) })
    if (part === undefined) return undefined
    if (before === undefined) name = part.name
    before = part.before
    parts.push(new Blob([before === null ? bytesOf(part.file) : rowsAlone(part)], { type: part.type }))
  }
  return { name, blob: new Blob(parts.toReversed(), { type: parts[0]?.type ?? '' }) }
}

/** The heading of a table stands over its oldest rows only. */
function rowsAlone({ type, file }: Part): Uint8Array<ArrayBuffer> {
  const bytes = bytesOf(file)
  return type === 'text/csv' ? bytes.subarray(bytes.indexOf(NEW_LINE) + 1) : bytes
}
