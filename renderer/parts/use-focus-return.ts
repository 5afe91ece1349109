import { useEffect, useLayoutEffect, useRef, type RefObject } from 'react'

/** Gives the focus back to where it was when something opened. */
export function useFocusReturn(open: boolean): void {
  useLayoutEffect(() => {
    if (!open) return undefined
    const before = document.activeElement
    return () => {
      // what lay on top is taken away after this, and takes the focus with it
      setTimeout(() => {
        if (!isLost()) return
        if (before instanceof HTMLElement && before !== document.body) before.focus()
        if (isLost()) document.querySelector('main')?.focus({ preventScroll: true })
      })
    }
  }, [open])
}

/** The page takes the focus when what had it is taken away, so that the next Tab goes to the first thing on it. */
export function useFocusKept(): RefObject<HTMLElement | null> {
  const page = useRef<HTMLElement>(null)
  useEffect(() => {
    const element = page.current
    if (element === null) return undefined
    const observer = new MutationObserver(() => { if (isLost()) element.focus({ preventScroll: true }) })
    observer.observe(element, { childList: true, subtree: true })
    return () => observer.disconnect()
  }, [])
  return page
}

/** Nothing in the window has the focus. */
function isLost(): boolean {
  return document.activeElement === null || document.activeElement === document.body
}
