const KEY = 'dipledger-token'

/** The parts of the browser that hold the token. */
export interface TokenPlaces {
  readonly location: Pick<Location, 'hash' | 'pathname' | 'search'>
  readonly history: Pick<History, 'replaceState'>
  readonly sessionStorage: Pick<Storage, 'getItem' | 'setItem'>
}

/**
 * The token the host handed over in the page's address (`#token=…`). It is kept for this tab and taken out of the
 * address bar, so that it is neither bookmarked nor seen over a shoulder.
 */
export function takeToken({ location, history, sessionStorage }: TokenPlaces): string {
  const match = /^#token=([^&]+)(?:&(.*))?$/.exec(location.hash)
  if (!match) return sessionStorage.getItem(KEY) ?? ''
  const token = decodeURIComponent(match[1] ?? '')
  sessionStorage.setItem(KEY, token)
  history.replaceState(null, '', `${location.pathname}${location.search}#${match[2] ?? ''}`)
  return token
}
