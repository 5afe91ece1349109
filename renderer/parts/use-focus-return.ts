import { useLayoutEffect } from 'react'

/** Gives the focus back to where it was when something opened; where that is gone or cannot take it, to the page. */
export function useFocusReturn(open: boolean): void {
  useLayoutEffect(() => {
    if (!open) return undefined
    const before = document.activeElement
    return () => {
      // what lay on top is taken away after this, and takes the focus with it
      setTimeout(() => {
        if (!isLost()) return
        if (before instanceof HTMLElement && before !== document.body) before.focus()
        if (isLost()) focusPage()
      })
    }
  }, [open])
}

/** The page of the job at hand takes the focus, so that the next Tab goes to the first thing on it. */
export function focusPage(): void {
  document.querySelector('main')?.focus({ preventScroll: true })
}

/** Nothing in the window has the focus. */
export function isLost(): boolean {
  return document.activeElement === null || document.activeElement === document.body
}
