import { join } from 'node:path'
import { parseArgs } from 'node:util'
import { app, BrowserWindow, dialog, ipcMain, Menu, protocol, session } from 'electron'
import { keepSchedule } from '../backup-schedule.ts'
import { LedgerFault } from '../../store/index.ts'
import { dataFolder } from '../data-folder.ts'
import { openLedger } from '../open-ledger.ts'
import { pageFilesIn } from '../page-files.ts'
import { answerWindow } from './ipc.ts'
import { menuOf } from './menu.ts'
import { START_PAGE } from './origin.ts'
import { announceScheme, servePages } from './pages.ts'
import { denyPermissions, keepToOwnPages, windowSettings } from './window.ts'

const built = join(import.meta.dirname, '..')

/** Opens the ledger and then the one window; ends when the window is closed. */
async function start(): Promise<void> {
  const { values } = parseArgs({ args: process.argv.slice(app.isPackaged ? 1 : 2), options: { folder: { type: 'string' }, ledger: { type: 'string' }, samples: { type: 'string' } }, strict: false })
  const folder = dataFolder(text(values.folder), process.env, process.platform)
  const context = await openLedger({ folder, ledger: text(values.ledger), samples: text(values.samples), say: (line) => console.log(line), log: (line) => console.error(line) })
  await app.whenReady()
  servePages(protocol, await pageFilesIn(join(built, 'renderer')))
  denyPermissions(session.defaultSession)
  const cancelAll = answerWindow(ipcMain, context)
  const stopBackups = keepSchedule(context)
  Menu.setApplicationMenu(Menu.buildFromTemplate(menuOf(app.isPackaged, process.platform)))
  app.on('will-quit', () => {
    cancelAll()
    void stopBackups().then(() => context.store?.close())
  })
  await openWindow()
}

async function openWindow(): Promise<void> {
  const window = new BrowserWindow(windowSettings(join(built, 'preload', 'preload.cjs'), app.isPackaged))
  window.once('ready-to-show', () => window.show())
  await window.loadURL(START_PAGE)
}

function text(value: string | boolean | undefined): string | undefined {
  return typeof value === 'string' ? value : undefined
}

if (app.requestSingleInstanceLock()) {
  announceScheme(protocol)
  app.enableSandbox()
  app.on('web-contents-created', (_event, contents) => keepToOwnPages(contents))
  app.on('second-instance', () => BrowserWindow.getAllWindows()[0]?.focus())
  app.on('window-all-closed', () => app.quit())
  start().catch((error: unknown) => {
    if (error instanceof LedgerFault) dialog.showErrorBox(app.name, error.message)
    else console.error(error)
    app.exit(1)
  })
} else {
  app.quit()
}
