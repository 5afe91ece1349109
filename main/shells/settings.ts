import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { z } from 'zod'
import { settingsSchema, type Settings, type SettingsFile } from '../operations/settings.ts'
import { LedgerFileFault, replaceFile } from '../store/index.ts'

/** The settings in a data folder; none are set as long as there is no file. */
export function settingsIn(folder: string): SettingsFile {
  const path = join(folder, 'settings.json')
  const read = (): Settings => readSettings(path)
  return {
    path, read,
    change: (part) => { replaceFile(path, `${JSON.stringify(settingsSchema.parse({ ...read(), ...part }), null, 2)}\n`) },
  }
}

function readSettings(path: string): Settings {
  const text = textOf(path)
  if (text === undefined) return {}
  try {
    return settingsSchema.parse(JSON.parse(text))
  } catch (error) {
    const why = error instanceof z.ZodError ? z.prettifyError(error).replace(/\s+/g, ' ') : error instanceof Error ? error.message : String(error)
    throw new LedgerFileFault(path, `The settings in ${path} cannot be used: ${why}. Mend the file, or move it away to begin with none.`, error)
  }
}

function textOf(path: string): string | undefined {
  try {
    return readFileSync(path, 'utf8')
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return undefined
    throw error
  }
}
