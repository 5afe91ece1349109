import { describe, expect, it } from 'vitest'
import { SOURCES } from '../../core/sources.ts'
import { filesBelow, textOf } from './sources-tree.ts'

const KEYS = new Set(Object.keys(SOURCES))
const CODE = [...filesBelow('core', ['.ts']), ...filesBelow('main', ['.ts'])].filter((path) => path !== 'core/sources.ts')

/** Citations in docstrings (`@source KEY clause`) and in code (`clause: 'KEY clause'`). */
function citations(text: string): readonly string[] {
  const inDocs = [...text.matchAll(/@source ([A-Za-z0-9.-]+)/g)].map((match) => match[1] ?? '')
  const inCode = [...text.matchAll(/clause: ['"`]([A-Za-z0-9.-]+)/g)].map((match) => match[1] ?? '')
  return [...inDocs, ...inCode].map((key) => key.replace(/[.]$/, ''))
}

describe('every cited source is known', () => {
  it.each(CODE)('%s', (path) => {
    expect(citations(textOf(path)).filter((key) => !KEYS.has(key))).toEqual([])
  })

  it('each source is cited by something', () => {
    const cited = new Set(CODE.flatMap((path) => [...textOf(path).matchAll(/['"`@ ]((?:[A-Z]+[A-Z0-9]*)(?:-[A-Z0-9.]+)*)(?=[ '"`])/g)].map((match) => match[1])))
    expect([...KEYS].filter((key) => !cited.has(key))).toEqual([])
  })

  it('numerical functions of core name the clause they implement', () => {
    const without = CODE.filter((path) => /^core\/(volume-correction|rounding)\//.test(path) && /export function/.test(textOf(path)) && !/@source/.test(textOf(path)))
    expect(without).toEqual([])
  })
})

describe('docstrings of core', () => {
  const DOC_AND_FUNCTION = /\/\*\*([\s\S]*?)\*\/\s*export function (\w+)(?:<[^>]*>)?\(([^)]*)\)/g

  it.each(filesBelow('core', ['.ts']))('%s: @param names are those of the signature', (path) => {
    const strangers = [...textOf(path).matchAll(DOC_AND_FUNCTION)].filter(([, , , parameters = '']) => !parameters.includes('{')).flatMap(([, doc = '', name = '', parameters = '']) =>
      [...doc.matchAll(/@param (?:\{[^}]*\} )?(\w+)/g)].filter(([, parameter]) => !new RegExp(`\\b${parameter}\\b`).test(parameters)).map(([, parameter]) => `${name}: ${parameter}`))
    expect(strangers).toEqual([])
  })
})

describe('@checked rows', () => {
  const rows = filesBelow('tests/published', ['.json']).flatMap((path) => [...textOf(path).matchAll(/"id":\s*"([^"]+)"/g)].map((match) => match[1]))

  it('every row that a docstring calls its check is in tests/published', () => {
    const checked = CODE.flatMap((path) => [...textOf(path).matchAll(/@checked ([^\s*]+)/g)].map((match) => ({ path, row: match[1] })))
    expect(checked.length).toBeGreaterThan(0)
    expect(checked.filter(({ row }) => !rows.includes(row))).toEqual([])
  })
})
