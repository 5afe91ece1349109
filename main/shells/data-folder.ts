import { mkdirSync } from 'node:fs'
import { homedir } from 'node:os'
import { join, resolve } from 'node:path'
import type { ChosenBy } from '../operations/context.ts'
import { isServerAddress } from '../store/index.ts'
import { settingsIn } from './settings.ts'

type Environment = Readonly<Record<string, string | undefined>>

/** Which ledger opens, and what named it. */
export interface ChosenLedger { readonly place: string; readonly chosenBy: ChosenBy }

/**
 * The ledger that the start names, on the command line or by DIPLEDGER_LEDGER; else that of the settings; else the file
 * in the data folder.
 */
export function chosenLedger(folder: string, named: string | undefined, environment: Environment): ChosenLedger {
  const own = ledgerIn(folder)
  const asked = named ?? environment['DIPLEDGER_LEDGER']
  if (asked !== undefined && asked !== '') return { place: asked, chosenBy: 'start' }
  const { ledger } = settingsIn(folder).read()
  if (ledger === undefined) return { place: own, chosenBy: 'folder' }
  return { place: isServerAddress(ledger) ? ledger : resolve(folder, ledger), chosenBy: 'settings' }
}

/** The ledger's file in a data folder; the folder is made when it is not there, for its owner alone. */
export function ledgerIn(folder: string): string {
  mkdirSync(folder, { recursive: true, mode: 0o700 })
  return join(folder, 'ledger.db')
}

/**
 * Where a person's ledger is kept: the folder named on the command line, else by DIPLEDGER_FOLDER, else the place
 * the system has for a program's data.
 */
export function dataFolder(named: string | undefined, environment: Environment, platform: NodeJS.Platform): string {
  const chosen = named ?? environment['DIPLEDGER_FOLDER']
  return chosen === undefined || chosen === '' ? usualFolder(environment, platform) : chosen
}

function usualFolder(environment: Environment, platform: NodeJS.Platform): string {
  if (platform === 'win32') return join(environment['APPDATA'] ?? homedir(), 'Dipledger')
  if (platform === 'darwin') return join(homedir(), 'Library', 'Application Support', 'Dipledger')
  return join(environment['XDG_DATA_HOME'] || join(homedir(), '.local', 'share'), 'dipledger')
}
