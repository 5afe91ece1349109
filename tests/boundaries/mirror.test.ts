import { existsSync, readdirSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { OPERATION_NAMES } from '../../main/operations/contracts/index.ts'
import { filesBelow, ROOT, textOf } from './sources-tree.ts'

describe('every folder of core', () => {
  const folders = readdirSync(join(ROOT, 'core'), { withFileTypes: true }).filter((entry) => entry.isDirectory()).map((entry) => entry.name)

  it.each(folders)('%s opens with an index that says what comes in and what goes out', (folder) => {
    const index = textOf(`core/${folder}/index.ts`)
    expect(index).toMatch(/^\/\*\*[\s\S]*?In:[\s\S]*?Out:[\s\S]*?\*\//)
  })

  it.each(folders)('%s has its mirror in tests/core', (folder) => {
    expect(existsSync(join(ROOT, 'tests/core', folder)), `tests/core/${folder}`).toBe(true)
  })
})

describe('every operation', () => {
  const tests = filesBelow('tests', ['.ts', '.tsx', '.json']).filter((path) => !path.startsWith('tests/boundaries/')).map(textOf)

  it.each(OPERATION_NAMES)('%s is called by a test', (name) => {
    expect(tests.some((text) => text.includes(`'${name}'`) || text.includes(`"${name}"`))).toBe(true)
  })
})
