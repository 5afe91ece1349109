import type { IncomingMessage } from 'node:http'
import { accepted, refused, type Outcome } from '../../../core/refusal/index.ts'
import { notJson } from '../../operations/malformed-input.ts'

export const BODY_LIMIT = 25 * 1024 * 1024

/** A request's body as text, or undefined when it is longer than the limit; the rest is then not read. */
export async function readBody(request: IncomingMessage): Promise<string | undefined> {
  if (Number(request.headers['content-length'] ?? 0) > BODY_LIMIT) return undefined
  const parts: Buffer[] = []
  let length = 0
  // Leaving early must not destroy the connection: the answer still goes out over it.
  for await (const part of request.iterator({ destroyOnReturn: false })) {
    length += part.length
    if (length > BODY_LIMIT) return undefined
    parts.push(part)
  }
  return Buffer.concat(parts).toString('utf8')
}

/** The JSON in a body. */
export function jsonIn(body: string): Outcome<unknown> {
  try {
    return accepted(JSON.parse(body))
  } catch {
    return refused(notJson(body))
  }
}
