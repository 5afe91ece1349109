import { useLayoutEffect, useState } from 'react'

const COVERED = 'covered'

/**
 * Covers everything in the window, sheets that lie on top too: it is out of sight, out of reach of the keyboard and not
 * read aloud, but stands as it was. Gives the element to put in front of it, and gives the focus back in the end.
 */
export function useCovered(): HTMLElement | undefined {
  const [door, setDoor] = useState<HTMLElement>()
  useLayoutEffect(() => {
    const focused = document.activeElement
    const under = [...document.body.children].filter((element): element is HTMLElement => element instanceof HTMLElement && !element.inert)
    for (const element of under) {
      element.inert = true
      element.classList.add(COVERED)
    }
    const made = document.createElement('div')
    made.className = 'door-place'
    document.body.append(made)
    setDoor(made)
    return () => {
      for (const element of under) {
        element.inert = false
        element.classList.remove(COVERED)
      }
      made.remove()
      if (focused instanceof HTMLElement && focused.isConnected) focused.focus()
    }
  }, [])
  return door
}
