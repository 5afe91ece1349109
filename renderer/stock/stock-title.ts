import { words } from '../words/en.ts'
import type { StockForm } from './stock-form.ts'

/** What a movement is called in lists: `Tank to tank T-101 → T-102`. */
export function stockTitle({ kind, tanks, line }: StockForm): string {
  const named = tanks.map(({ tank }) => tank).filter((code) => code !== '')
  const what = kind === 'line-fill' ? line.code : kind === 'blend' && named.length > 1 ? `${named.slice(0, -1).join(' + ')} → ${named.at(-1) ?? ''}` : named.join(' → ')
  return words.stock.newTitle(words.stock.kinds[kind], what)
}
