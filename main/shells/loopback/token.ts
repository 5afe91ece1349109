import { createHash, randomBytes, timingSafeEqual } from 'node:crypto'

const TOKEN_BYTES = 32

/** A token for one start of the host: whoever knows it may call operations. */
export function newToken(): string {
  return randomBytes(TOKEN_BYTES).toString('base64url')
}

/** Whether two tokens are the same, in a time that tells nothing about where they differ. */
export function sameToken(given: string | undefined, expected: string): boolean {
  const digest = (text: string): Buffer => createHash('sha256').update(text).digest()
  return timingSafeEqual(digest(given ?? ''), digest(expected)) && given !== undefined
}
