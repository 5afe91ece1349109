import { useSyncExternalStore } from 'react'

export const JOBS = ['transfer', 'register', 'month', 'yard', 'people', 'check', 'ledger', 'density', 'stock', 'storage'] as const
export type Job = (typeof JOBS)[number]

/** Where the window is: a job, what it looks at, and how. `#/register/CPT-000012?tank=T-101` */
export interface Route {
  readonly job: Job | 'gauge'
  readonly rest: readonly string[]
  readonly query: Readonly<Record<string, string>>
}

/** Reads the part of the address behind `#`; an unknown place leads to the transfer. */
export function readRoute(hash: string): Route {
  const [path = '', search = ''] = hash.replace(/^#\/?/, '').split('?')
  const [job = '', ...rest] = path.split('/').filter((part) => part !== '').map(decoded)
  const query = Object.fromEntries(new URLSearchParams(search))
  const known = job === 'gauge' || JOBS.some((name) => name === job)
  return known ? { job: job as Route['job'], rest, query } : { job: 'transfer', rest: [], query: {} }
}

/** The address of a place: `addressOf('register', ['CPT-000012'])`. */
export function addressOf(job: Route['job'], rest: readonly string[] = [], query: Readonly<Record<string, string>> = {}): string {
  const search = new URLSearchParams(query).toString()
  return `#/${[job, ...rest.map(encodeURIComponent)].join('/')}${search && `?${search}`}`
}

/** Goes to a place; `replace` leaves no step back. */
export function goTo(address: string, { replace = false }: { readonly replace?: boolean } = {}): void {
  if (!replace) {
    window.location.hash = address
    return
  }
  window.history.replaceState(null, '', address)
  window.dispatchEvent(new HashChangeEvent('hashchange'))
}

function decoded(part: string): string {
  try {
    return decodeURIComponent(part)
  } catch {
    return part
  }
}

function onChange(listener: () => void): () => void {
  window.addEventListener('hashchange', listener)
  return () => window.removeEventListener('hashchange', listener)
}

/** The place the window is at. */
export function useRoute(): Route {
  return readRoute(useSyncExternalStore(onChange, () => window.location.hash, () => ''))
}
