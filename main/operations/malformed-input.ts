import type { z } from 'zod'
import type { Finding } from '../../core/refusal/index.ts'

type Issue = z.core.$ZodIssue
type Path = readonly PropertyKey[]

const SHOWN = 60
const EXPECTED: Readonly<Record<string, string>> = {
  string: 'a text', object: 'an object', record: 'an object', array: 'a list', tuple: 'a list', boolean: 'true or false', number: 'a number', int: 'a whole number',
}
/** Fields whose value is never repeated to anybody. */
const SECRET = /passphrase$/i
/** What stands between the user and the host in an address of a server. */
const PASSWORD_IN_ADDRESS = /(:\/\/[^:@/\s]*:)[^@\s]*@/g

/** Every issue of a schema as a finding: where, what stood there, what would be accepted. */
export function malformedInput(issues: readonly Issue[], input: unknown): readonly Finding[] {
  return issues.flatMap((issue) => findingsOf(issue, [], input))
}

/** The one finding for a text that is no JSON at all. */
export function notJson(text: string): Finding {
  // what cannot be read cannot be told apart: where a passphrase may be in it, none of it is repeated
  return finding([], /passphrase|:\/\//i.test(text) ? 'not shown' : text, 'JSON, an object with the fields of the operation')
}

function findingsOf(issue: Issue, above: Path, input: unknown): readonly Finding[] {
  const path = [...above, ...issue.path]
  const value = at(input, path)
  switch (issue.code) {
    case 'unrecognized_keys':
      return issue.keys.map((key) => finding([...path, key], at(value, [key]), 'a field that this operation knows; this one it does not'))
    case 'invalid_union':
      return nearest(issue.errors).flatMap((nested) => findingsOf(nested, path, input)).concat(issue.errors.length > 0 ? [] : [finding(path, value, limitOf(issue))])
    case 'invalid_key':
    case 'invalid_element':
      return [finding(path, value, issue.issues.map(limitOf).join(', '))]
    default:
      return [finding(path, value, limitOf(issue))]
  }
}

/** Of several forms, the one that the input misses least. */
function nearest(branches: readonly (readonly Issue[])[]): readonly Issue[] {
  return branches.toSorted((a, b) => a.length - b.length)[0] ?? []
}

function limitOf(issue: Issue): string {
  switch (issue.code) {
    case 'invalid_type': return `expected ${EXPECTED[issue.expected] ?? issue.expected}`
    case 'too_small': return Number(issue.minimum) === 1 && issue.origin === 'string' ? 'a text that is not empty' : `${issue.inclusive ?? true ? 'at least' : 'more than'} ${String(issue.minimum)}${things(issue.origin)}`
    case 'too_big': return `${issue.inclusive ?? true ? 'at most' : 'less than'} ${String(issue.maximum)}${things(issue.origin)}`
    case 'invalid_format': return issue.format === 'regex' ? `must match ${issue.pattern ?? 'its pattern'}` : `expected ${issue.format}`
    case 'invalid_value': return `one of ${issue.values.map(String).join(', ')}`
    case 'invalid_union': return 'options' in issue && Array.isArray(issue.options) ? `one of ${issue.options.join(', ')}` : issue.message
    default: return issue.message
  }
}

function things(origin: string): string {
  if (origin === 'string') return ' characters'
  return origin === 'array' ? ' items' : ''
}

function finding(path: Path, value: unknown, limit: string): Finding {
  const stood = isSecret(path) ? 'not shown' : shown(value)
  return { code: 'malformed-input', path: path.map(String).join('.'), value: stood, limit: value === undefined ? `it is missing; ${limit}` : limit, clause: 'HOUSE input' }
}

/** Whether the value at a path is never repeated to anybody. */
export function isSecret(path: Path): boolean {
  return path.some((part) => typeof part === 'string' && SECRET.test(part))
}

function shown(value: unknown): string {
  if (value === undefined) return ''
  const text = (typeof value === 'string' ? value : asJson(value)).replace(PASSWORD_IN_ADDRESS, '$1…@')
  return text.length > SHOWN ? `${text.slice(0, SHOWN)}…` : text
}

/** A value nested deeper than the machine's stack cannot be written out again; that is the input's fault, not ours. */
function asJson(value: unknown): string {
  try {
    return JSON.stringify(value, (key, part: unknown) => (SECRET.test(key) ? 'not shown' : part))
  } catch (error) {
    if (error instanceof RangeError) return 'a value nested too deeply'
    throw error
  }
}

function at(input: unknown, path: Path): unknown {
  return path.reduce<unknown>((value, key) => (isRecord(value) && Object.hasOwn(value, key) ? value[key] : undefined), input)
}

function isRecord(value: unknown): value is Readonly<Record<PropertyKey, unknown>> {
  return typeof value === 'object' && value !== null
}
