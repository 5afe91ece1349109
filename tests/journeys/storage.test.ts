import { existsSync, mkdtempSync, readdirSync, readFileSync, renameSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openStore } from '../../main/store/index.ts'
import { openApp, type App } from './app.ts'
import { goTo } from './pages.ts'

let app: App
const folder = mkdtempSync(join(tmpdir(), 'dipledger-storage-'))
const backups = join(folder, 'second disk')
beforeAll(async () => { app = await openApp() }, 240_000)
afterAll(async () => {
  await app.close()
  rmSync(folder, { recursive: true, force: true })
})

const write = (label: string, text: string): Promise<void> => app.page.getByLabel(label, { exact: true }).fill(text)
const press = (name: string): Promise<void> => app.page.getByRole('button', { name, exact: true }).click()
const enter = (): Promise<void> => app.page.keyboard.press('Control+Enter')
const head = async (): Promise<string> => (await app.context.store?.head())?.hash ?? ''

describe('an administrator sees to the backups', () => {
  it('is told that there are none, and sets where they go; what is wrong stands beside its field', async () => {
    await goTo(app.page, 'Yard')
    await app.page.keyboard.press('Alt+0')
    await app.page.getByRole('heading', { level: 1, name: 'Storage' }).waitFor()
    await app.page.getByText('No folder for backups is set').waitFor()
    expect(await app.page.getByRole('button', { name: /^Back up now/ }).isDisabled()).toBe(true)
    await press('Rules …')
    await write('Folder on this machine', join(app.context.place?.folder ?? '', 'backups'))
    await enter()
    await app.page.getByText(/it lies in .* the folder of a ledger/).waitFor()
    await write('Folder on this machine', backups)
    await write('Newest kept', '1')
    for (const grain of ['Days', 'Weeks', 'Months']) await write(`${grain} kept`, '0')
    await enter()
    await app.page.getByText('every 24 hours, kept: the newest 1').waitFor()
    expect(await app.seriousAxeFindings()).toEqual([])
  })

  it('makes a backup with a key, and sees it verified', async () => {
    await enter()
    await app.page.getByText(/^CPT-2026-10-05T090000Z-\d+[.]db is made and verified: /).waitFor({ timeout: 30_000 })
    await app.page.getByRole('region', { name: 'Backups' }).getByText('kept: newest').waitFor()
    expect(await app.page.getByText(/^2026-10-05 10:00, up to entry \d+$/).count()).toBe(1)
    expect(await app.seriousAxeFindings()).toEqual([])
  })

  it('looks at it again, and restores from it into a new place', async () => {
    await app.page.getByRole('region', { name: 'Backups' }).getByText(/^CPT-.*[.]db$/).click()
    await press('Verify again')
    await app.page.getByText(/^It is whole: \d+ entries/).waitFor({ timeout: 30_000 })
    await press('Restore from it …')
    await write('New ledger', join(folder, 'restored', 'ledger.db'))
    await enter()
    await app.page.getByText(/is there, checked: \d+ entries, \d+ tickets, head /).waitFor({ timeout: 30_000 })
    await app.page.locator('.storage-close').getByRole('button', { name: 'Close' }).click()
    const restored = await openStore(join(folder, 'restored', 'ledger.db'))
    expect((await restored.head()).hash).toBe(await head())
    await restored.close()
  })

  it('exports the ledger, and imports it again', async () => {
    await press('Export …')
    await write('New file', 'ledger.jsonl')
    await enter()
    await app.page.getByText(/write the whole path/).waitFor()
    await write('New file', join(folder, 'ledger.jsonl'))
    await enter()
    await app.page.getByText(/is written: \d+ entries, \d+ documents/).waitFor({ timeout: 30_000 })
    await app.page.locator('.storage-close').getByRole('button', { name: 'Close' }).click()
    expect(readFileSync(join(folder, 'ledger.jsonl'), 'utf8').trimEnd().endsWith(`"head":"${await head()}"}}`)).toBe(true)
    await press('Import …')
    await write('Exported file', join(folder, 'ledger.jsonl'))
    await write('New ledger', join(folder, 'imported', 'ledger.db'))
    await enter()
    await app.page.getByText(/is there, checked: /).waitFor({ timeout: 60_000 })
    expect(await app.seriousAxeFindings()).toEqual([])
    await app.page.locator('.storage-close').getByRole('button', { name: 'Close' }).click()
    expect(existsSync(join(folder, 'imported', 'ledger.db'))).toBe(true)
  }, 90_000)

  it('sees in the band, wherever the window is, that backups fail, and goes there', async () => {
    renameSync(backups, `${backups} away`)
    await goTo(app.page, 'Yard')
    await app.reopen()
    await app.page.getByRole('banner').getByText('Backup failed').click()
    await app.page.getByText(/it is not there; connect its disk, or choose another folder/).first().waitFor()
    renameSync(`${backups} away`, backups)
    await app.page.getByRole('button', { name: 'Try again' }).first().click()
    await app.page.getByText('kept: newest').waitFor()
    expect(readdirSync(backups).filter((name) => name.endsWith('.db'))).toHaveLength(1)
    expect(app.consoleErrors).toEqual([])
  })

  it('sees every warning in the band beside the places to go, under a long name too', async () => {
    const told = async (name: string, change: (result: Record<string, unknown>) => void): Promise<void> => {
      await app.page.route(`**/op/${name}`, async (route) => {
        const response = await route.fetch()
        const lines = (await response.text()).split('\n').map((line) => {
          if (!line.includes('"result"')) return line
          const answer = JSON.parse(line) as { result: Record<string, unknown> }
          change(answer.result)
          return JSON.stringify(answer)
        })
        await route.fulfill({ response, body: lines.join('\n') })
      })
    }
    await told('terminal', (result) => { result['terminal'] = { ...result['terminal'] as object, name: 'Calder Point Terminal with the Outer Harbour and all its Jetties' } })
    await told('storage', (result) => { result['room'] = { free: 300_000_000, advised: 2_000_000_000, enough: false }; result['clock'] = { aheadSeconds: -412, agrees: false } })
    await told('backup-state', (result) => { result['failed'] = { at: '2026-10-05T09:00:00Z', message: 'the disk is away' } })
    await app.reopen()
    for (const warning of ['Backup failed', 'Disk nearly full', 'Clock is wrong']) await app.page.getByRole('banner').getByRole('alert').filter({ hasText: warning }).waitFor()
    expect(await app.page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBe(0)
    expect(await app.page.locator('.band-keys').evaluate((button) => button.getBoundingClientRect().right)).toBeLessThanOrEqual(1280)
    await app.page.unrouteAll({ behavior: 'wait' })
  })
})
