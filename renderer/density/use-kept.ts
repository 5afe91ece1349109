import { useState } from 'react'
import type { z } from 'zod'

/**
 * What was typed on a bench, kept as long as the window stands open: another job, or opening the page again, does not lose it.
 * What was kept by another version and no longer fits the form is let go.
 */
export function useKept<F>(name: string, schema: z.ZodType<F>, empty: F): readonly [F, (form: F) => void] {
  const key = `dipledger-bench-${name}`
  const [form, setForm] = useState(() => {
    const text = typeof sessionStorage === 'undefined' ? null : sessionStorage.getItem(key)
    const read = schema.safeParse(text === null ? empty : fromJson(text))
    return read.success ? read.data : empty
  })
  const write = (next: F): void => {
    setForm(next)
    sessionStorage.setItem(key, JSON.stringify(next))
  }
  return [form, write]
}

function fromJson(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch {
    return undefined
  }
}
