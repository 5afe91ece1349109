import { join } from 'node:path'
import { filesBelow } from '../../main/shells/fill-from-samples.ts'

export const SAMPLES = join(import.meta.dirname, '..', '..', 'samples')
/** The passphrase that samples/README.md states. */
export const SAMPLE_PASSPHRASE = 'north mole lantern'
/** September 2026 between gauge hours, 06:00 in Lisbon. */
export const SEPTEMBER = { from: '2026-09-01T05:00:00Z', to: '2026-10-01T05:00:00Z' }

export function sampleFiles(): Promise<Readonly<Record<string, string>>> {
  return filesBelow(SAMPLES)
}

/** The sample files with texts of one of them replaced; a text that is not there is a mistake of the test. */
export async function sampleFilesWith(file: string, ...changes: readonly (readonly [was: string, is: string])[]): Promise<Readonly<Record<string, string>>> {
  const files = await sampleFiles()
  let text = files[file] ?? ''
  for (const [was, is] of changes) {
    if (!text.includes(was)) throw new Error(`${file} does not contain “${was}”`)
    text = text.replace(was, is)
  }
  return { ...files, [file]: text }
}
