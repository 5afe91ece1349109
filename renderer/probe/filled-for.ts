import type { Route } from '../app/route.ts'

/** Where the figures are to go, when a page was opened from a transfer. */
export interface FilledFor { readonly draft: string; readonly gauge: 'opening' | 'closing' }

/** The gauge of a transfer that a page is to fill, as its address says. */
export function filledFor({ query }: Route): FilledFor | undefined {
  const { draft, gauge } = query
  return draft === undefined || draft === '' ? undefined : { draft, gauge: gauge === 'closing' ? 'closing' : 'opening' }
}
