export interface Sorting { readonly key: string; readonly direction: 'ascending' | 'descending' }

/** A click on a head: ascending, then descending, then the order the rows came in. */
export function nextSort(sorting: Sorting | null, key: string): Sorting | null {
  if (sorting?.key !== key) return { key, direction: 'ascending' }
  return sorting.direction === 'ascending' ? { key, direction: 'descending' } : null
}

/** Rows in a new order; equal rows keep theirs. Numbers go by size, text by the alphabet. */
export function sortRows<Row>(rows: readonly Row[], by: (row: Row) => string | number, direction: Sorting['direction']): readonly Row[] {
  const way = direction === 'ascending' ? 1 : -1
  return [...rows].sort((a, b) => {
    const [x, y] = [by(a), by(b)]
    return way * (typeof x === 'number' && typeof y === 'number' ? x - y : String(x).localeCompare(String(y), 'en', { numeric: true }))
  })
}
