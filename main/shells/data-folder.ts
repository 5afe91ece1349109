import { mkdirSync } from 'node:fs'
import { homedir } from 'node:os'
import { join } from 'node:path'

type Environment = Readonly<Record<string, string | undefined>>

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
