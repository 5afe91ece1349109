import { readFile } from 'node:fs/promises'
import { basename, resolve } from 'node:path'
import { z } from 'zod'
import { accepted, refused, type Outcome } from '../../../core/refusal/index.ts'
import { OPERATIONS, type OperationName } from '../../operations/contracts/index.ts'
import { notJson } from '../../operations/malformed-input.ts'
import { isServerAddress } from '../../store/index.ts'

/** What the command line reads from. */
export interface Source {
  /** All of standard input. */
  readonly standardInput: () => Promise<string>
  /** Whether a person sits at standard input, so that nothing will come from it. */
  readonly isTerminal: boolean
}

/**
 * The input of an operation, from JSON in a file or on standard input, with a file's bytes put in as base64 where the
 * operation takes one.
 */
export async function readInput(operation: OperationName, paths: readonly string[], source: Source): Promise<Outcome<unknown>> {
  const given = await readGiven(operation, paths, source)
  return given.ok ? accepted(fromHere(operation, given.value)) : given
}

async function readGiven(operation: OperationName, paths: readonly string[], source: Source): Promise<Outcome<unknown>> {
  const field = OPERATIONS[operation].file
  const isJson = (path: string): boolean => path === '-' || field === undefined || path.endsWith('.json')
  const jsonPath = paths.find(isJson)
  const filePath = paths.find((path) => !isJson(path))
  if (paths.length > 1 && (jsonPath === undefined || filePath === undefined)) {
    return refused({ code: 'malformed-input', path: 'command line', value: paths.join(' '), limit: field === undefined ? 'one input: a path of a JSON file, or -' : 'at most one JSON input and one file', clause: 'HOUSE command line' })
  }
  const given = jsonPath === undefined && filePath !== undefined ? accepted({}) : await readJson(operation, jsonPath, source)
  if (!given.ok || field === undefined || filePath === undefined) return given
  const file = await readBytes(filePath)
  if (!file.ok) return file
  if (typeof given.value !== 'object' || given.value === null) return given
  return accepted({ ...nameOf(operation, filePath), ...given.value, [field]: file.value.toString('base64') })
}

async function readJson(operation: OperationName, path: string | undefined, source: Source): Promise<Outcome<unknown>> {
  const text = await readText(path, source)
  if (!text.ok) return text
  const wantsNothing = OPERATIONS[operation].input.safeParse({}).success
  if (text.value === undefined || (path === undefined && text.value.trim() === '')) {
    if (wantsNothing) return accepted({})
    return refused({ code: 'missing-value', path: 'input', value: '', limit: missing(operation), clause: 'HOUSE command line' })
  }
  try {
    return accepted(JSON.parse(text.value))
  } catch {
    return refused(notJson(text.value))
  }
}

/** Undefined when nothing is named and nothing will come by itself. */
async function readText(path: string | undefined, source: Source): Promise<Outcome<string | undefined>> {
  if (path === undefined && source.isTerminal) return accepted(undefined)
  if (path === undefined || path === '-') return accepted(await source.standardInput())
  const file = await readBytes(path)
  return file.ok ? accepted(file.value.toString('utf8').replace(/^\uFEFF/, '')) : file
}

async function readBytes(path: string): Promise<Outcome<Buffer>> {
  try {
    return accepted(await readFile(path))
  } catch (error) {
    const why = error instanceof Error && 'code' in error ? String(error.code) : 'unknown'
    return refused({ code: 'missing-value', path: 'input', value: path, limit: `no file can be read at “${path}” (${why})`, clause: 'HOUSE command line' })
  }
}

function missing(operation: OperationName): string {
  const example = OPERATIONS[operation].file === undefined ? 'input.json' : 'FILE'
  return `write npx dipledger ${operation} ${example}, or pipe JSON into it; npx dipledger schema ${operation} says what goes in`
}

function nameOf(operation: OperationName, path: string): { readonly name?: string } {
  const { input } = OPERATIONS[operation]
  return input instanceof z.ZodObject && 'name' in input.shape ? { name: basename(path) } : {}
}

/** Paths are those of where the command line runs. */
function fromHere(operation: OperationName, given: unknown): unknown {
  if (typeof given !== 'object' || given === null || Array.isArray(given)) return given
  const { paths = [] } = OPERATIONS[operation]
  return Object.fromEntries(Object.entries(given).map(([field, value]) => [field, paths.includes(field) && typeof value === 'string' && value !== '' && !isServerAddress(value) ? resolve(value) : value]))
}
