import type { Finding } from '../../core/refusal/index.ts'
import { isSecret } from './malformed-input.ts'

/** The character that no text of a ledger can hold: PostgreSQL keeps none, and a ledger moves between databases. */
const ZERO = '\u0000'

/** A finding for every text in an input that holds a zero character. */
export function unwritableText(input: unknown, path: readonly string[] = []): readonly Finding[] {
  if (typeof input === 'string') return input.includes(ZERO) ? [finding(input, path)] : []
  if (typeof input !== 'object' || input === null) return []
  return Object.entries(input).flatMap(([key, value]) => [...(key.includes(ZERO) ? [finding(key, path)] : []), ...unwritableText(value, [...path, key])])
}

function finding(text: string, path: readonly string[]): Finding {
  return { code: 'malformed-input', path: path.join('.'), value: isSecret(path) ? 'not shown' : text.replaceAll(ZERO, '␀').slice(0, 60), limit: 'a text without a zero character (shown as ␀), which is no letter or sign', clause: 'HOUSE input' }
}
