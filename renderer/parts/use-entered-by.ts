import { useState } from 'react'

const KEY = 'dipledger-entered-by'

/** Who enters something in the book: asked once, remembered as long as the window stands open. */
export function useEnteredBy(): readonly [string, (name: string) => void] {
  const [name, setName] = useState(() => (typeof sessionStorage === 'undefined' ? '' : sessionStorage.getItem(KEY) ?? ''))
  const enter = (next: string): void => {
    setName(next)
    sessionStorage.setItem(KEY, next)
  }
  return [name, enter]
}
