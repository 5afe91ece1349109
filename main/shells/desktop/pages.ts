import type { Protocol } from 'electron'
import type { PageFiles } from '../page-files.ts'
import { SECURITY_HEADERS } from '../page-policy.ts'
import { isOwnAddress, SCHEME } from './origin.ts'

/** Must be said before the program is ready: the scheme is a secure origin of its own, as https is. */
export function announceScheme(protocol: Pick<Protocol, 'registerSchemesAsPrivileged'>): void {
  protocol.registerSchemesAsPrivileged([{ scheme: SCHEME, privileges: { standard: true, secure: true, supportFetchAPI: true } }])
}

/** Serves the window's files under its own scheme, and nothing else. */
export function servePages(protocol: Pick<Protocol, 'handle'>, files: PageFiles): void {
  protocol.handle(SCHEME, async (request) => {
    const file = request.method === 'GET' && isOwnAddress(request.url) ? await files(new URL(request.url).pathname) : undefined
    if (!file) return new Response('There is no such file.', { status: 404, headers: SECURITY_HEADERS })
    return new Response(file.bytes, { headers: { ...SECURITY_HEADERS, 'content-type': file.type } })
  })
}
