import { useState, type ReactNode } from 'react'
import { Button } from '../parts/Button.tsx'
import { words } from '../words/en.ts'

/** Throws a draft away, asked twice: the second press on the same button does it; leaving it takes the question back. */
export function DiscardButton({ onDiscard }: { readonly onDiscard: () => void }): ReactNode {
  const [asked, setAsked] = useState(false)
  return (
    <Button onClick={(event) => { event.stopPropagation(); if (asked) onDiscard(); else setAsked(true) }} onBlur={() => setAsked(false)}>
      {asked ? words.transfer.discardSure : words.transfer.discard}
    </Button>
  )
}
