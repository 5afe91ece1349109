import { globSync } from 'node:fs'
import { join } from 'node:path'
import type { ReactNode } from 'react'
import { renderToString } from 'react-dom/server'
import { describe, expect, it } from 'vitest'
import { Surroundings } from '../../../renderer/app/App.tsx'
import { TerminalContext } from '../../../renderer/app/TerminalContext.tsx'
import type { Bridge } from '../../../renderer/bridge/bridge.ts'
import { BackupPanel } from '../../../renderer/storage/BackupPanel.tsx'
import { BackupTable } from '../../../renderer/storage/BackupTable.tsx'
import { FactLines } from '../../../renderer/storage/FactLines.tsx'
import { JobPanel } from '../../../renderer/storage/JobPanel.tsx'
import { RetirePanel } from '../../../renderer/storage/RetirePanel.tsx'
import { RulesPanel } from '../../../renderer/storage/RulesPanel.tsx'
import { Running } from '../../../renderer/storage/Running.tsx'
import { StoragePage } from '../../../renderer/storage/StoragePage.tsx'
import { aTerminalNow } from '../a-yard.ts'

const nothing = (): void => undefined
const silent: Bridge = { call: () => new Promise(() => undefined) }
const backup = { name: 'CPT-2026-03-14T061000Z-40.db', at: '2026-03-14T06:10:00Z', entries: 40, size: 1_323_008, head: 'a'.repeat(64), sha256: '', standing: 'changed', verifiedAt: null, fate: 'retired', because: [] } as const

/** Sheets are laid over the page by the browser alone; here it is enough that they can be made. */
const COMPONENTS: Readonly<Record<string, readonly [ReactNode, string]>> = {
  StoragePage: [<StoragePage route={{ job: 'storage', rest: [], query: {} }} />, 'Back up now'],
  BackupTable: [<BackupTable backups={[{ ...backup, because: [] }]} onChoose={nothing} />, 'deleted next'],
  'BackupTable, empty': [<BackupTable backups={[]} onChoose={nothing} />, 'There is no backup in this folder yet.'],
  FactLines: [<FactLines facts={[{ name: 'Last attempt', value: 'The disk is full.', wrong: true }]} />, 'storage-wrong'],
  Running: [<Running label="Back up now" step={{ done: 3, of: 7, what: 'pages' }} onCancel={nothing} />, 'pages: 3 of 7'],
  'Running, of unknown length': [<Running label="Back up now" step={{ done: 0, of: 0, what: 'writing to disk' }} onCancel={nothing} />, 'writing to disk …'],
  BackupPanel: [<BackupPanel name={backup.name} onClose={nothing} onVerified={nothing} onRestore={nothing} />, ''],
  JobPanel: [(['restore', 'export', 'import', 'copy', 'place'] as const).map((name) => <JobPanel key={name} name={name} given={{}} onClose={nothing} />), ''],
  RetirePanel: [<RetirePanel names={[backup.name]} onClose={nothing} onRetired={nothing} />, ''],
  RulesPanel: [<RulesPanel rules={null} onClose={nothing} onSet={nothing} />, ''],
}

describe('every component of storage', () => {
  it.each(Object.entries(COMPONENTS))('%s renders', (_, [component, words]) => {
    const html = renderToString(<Surroundings bridge={silent}><TerminalContext value={{ now: aTerminalNow(), again: nothing }}>{component}</TerminalContext></Surroundings>)
    expect(html.replaceAll('<!-- -->', '')).toContain(words)
  })

  it('stands in this list', async () => {
    const root = join(import.meta.dirname, '../../../renderer')
    const missing: string[] = []
    for (const file of globSync('storage/*.tsx', { cwd: root })) {
      const module: Record<string, unknown> = await import(join(root, file))
      missing.push(...Object.entries(module).filter(([name, value]) => typeof value === 'function' && /^[A-Z][a-z]/.test(name) && !(name in COMPONENTS)).map(([name]) => `${file}: ${name}`))
    }
    expect(missing).toEqual([])
  })
})
