import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { ROOT, textOf } from './sources-tree.ts'

const [, section = ''] = textOf('DEVELOPERS.md').split('## Held against other people\'s yardsticks')
const rows = section.split('\n').filter((line) => /^\| (?!Requirement|Clause|---)/.test(line) && !line.startsWith('|---'))
const cells = rows.map((row) => row.slice(1, -1).split('|').map((cell) => cell.trim()))
const named = (cell: string): readonly string[] => [...cell.matchAll(/`([^`]+)`/g)].map(([, path = '']) => path)

describe('the table of requirements', () => {
  it('has four cells in every row, and says of each whether it is met', () => {
    expect(cells.length).toBeGreaterThan(40)
    expect(cells.filter((row) => row.length !== 4 || !/^(met|partly|not met)\b/.test(row[3] ?? ''))).toEqual([])
  })

  it('names only files and tests that there are', () => {
    const paths = cells.flatMap(([, where = '', tests = '']) => [...named(where), ...named(tests)])
    expect(paths.filter((path) => !existsSync(join(ROOT, path)))).toEqual([])
  })

  it('shows by a test whatever it calls met', () => {
    const unshown = cells.filter(([, where = '', tests = '', standing = '']) => standing.startsWith('met') && (named(where).length === 0 || !named(tests).every((path) => /^tests\/.*\.test\.tsx?$/.test(path)) || named(tests).length === 0))
    expect(unshown).toEqual([])
  })
})
