import type { Locator, Page } from 'playwright-core'

/** Goes to a job by its word in the band. */
export async function goTo(page: Page, job: string): Promise<void> {
  await page.getByRole('banner').getByText(job, { exact: true }).click()
  await page.getByRole('heading', { level: 1 }).first().waitFor()
}

/** One column of the gauge sheet, as it is written down at the tank. */
export interface GaugeColumn {
  readonly time: string; readonly 'read by': string; readonly level: string; readonly 'water cut': string
  readonly 'liquid temperature': string; readonly 'ambient temperature': string
  readonly density: string; readonly 'density temperature': string; readonly 'sediment and water': string
}

/** The transfer's entry sheet. */
export function transferSheet(page: Page) {
  const field = (column: string, name: string): Locator => page.getByRole('textbox', { name: `${column}: ${name}`, exact: true })
  return {
    begin: async (tank: string, kind: 'receipt' | 'delivery') => {
      await page.getByRole('combobox', { name: 'Tank' }).selectOption(tank)
      await page.getByRole('button', { name: `New ${kind}` }).click()
    },
    parties: async (from: string, to: string) => {
      await page.getByRole('combobox', { name: 'From' }).selectOption(from)
      await page.getByRole('combobox', { name: 'To' }).selectOption(to)
    },
    field,
    /** Opens a part of the sheet that is folded away. */
    unfold: (part: string) => page.getByRole('button', { name: `▸ ${part}` }).click(),
    write: async (column: 'Opening' | 'Closing', gauge: GaugeColumn, instrument: string) => {
      await page.getByRole('combobox', { name: `${column}: density by` }).selectOption(instrument)
      for (const [name, text] of Object.entries(gauge)) await field(column, name).fill(text)
      await field(column, 'sediment and water').blur()
    },
    openSigning: () => page.getByRole('button', { name: 'Sign and book' }).first().click(),
    sign: async (which: 'First' | 'Second', who: string, as: string, passphrase: string) => {
      const group = page.getByRole('dialog').getByRole('group', { name: `${which} signature` })
      await group.getByRole('combobox', { name: 'Who signs' }).selectOption(who)
      await group.getByRole('combobox', { name: 'Signs as' }).selectOption({ label: as })
      await group.getByRole('textbox', { name: 'Passphrase' }).fill(passphrase)
    },
    book: () => page.getByRole('dialog').getByRole('button', { name: 'Sign and book' }).click(),
  }
}

/** The sheet on which an automatic gauge is held against hand gauges. */
export function verificationSheet(page: Page) {
  const field = (name: string): Locator => page.getByRole('textbox', { name, exact: true })
  return {
    head: async (written: { readonly gauge: string; readonly time: string; readonly by: string; readonly enteredBy: string }) => {
      await field('Gauge').fill(written.gauge)
      await page.getByRole('textbox', { name: /^Time \(/ }).fill(written.time)
      await field('Gauged by').fill(written.by)
      await field('Entered by').fill(written.enteredBy)
    },
    level: async (stage: 'As found' | 'As left', level: number, automatic: string, hand: readonly string[]) => {
      await field(`${stage}, level ${level}: automatic gauge`).fill(automatic)
      for (const [i, reading] of hand.entries()) await field(`${stage}, level ${level}: hand reading ${i + 1}`).fill(reading)
      await field(`${stage}, level ${level}: hand reading ${hand.length}`).blur()
    },
  }
}
