import { useState } from 'react'
import { useDesk } from '../bridge/desk.ts'

const KEY = 'dipledger-entered-by'

/** Who enters something in the book: whoever is signed in; where nobody is on record, asked once and remembered as long as the window stands open. */
export function useEnteredBy(): readonly [string, (name: string) => void] {
  const [name, setName] = useState(() => (typeof sessionStorage === 'undefined' ? '' : sessionStorage.getItem(KEY) ?? ''))
  const session = useDesk()?.now.session
  const enter = (next: string): void => {
    setName(next)
    sessionStorage.setItem(KEY, next)
  }
  return [session?.person.name ?? name, enter]
}
