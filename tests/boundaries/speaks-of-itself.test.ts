import { execFileSync } from 'node:child_process'
import { describe, expect, it } from 'vitest'
import { filesBelow, ROOT, textOf } from './sources-tree.ts'

const FOLDERS = ['core', 'main', 'renderer', 'tests', 'samples', 'scripts']
const TEXT = ['.ts', '.tsx', '.md', '.json', '.csv', '.css', '.html']

describe('the project speaks of itself alone', () => {
  it('leaves no unfinished marks', () => {
    const marks = new RegExp(['TO' + 'DO', 'FIX' + 'ME', 'X{3}'].map((mark) => `\\b${mark}\\b`).join('|'))
    const marked = [...FOLDERS.flatMap((folder) => filesBelow(folder, TEXT)), 'README.md', 'DEVELOPERS.md'].filter((path) => marks.test(textOf(path)))
    expect(marked).toEqual([])
  })

  it('keeps private keys out of what is committed', () => {
    const tracked = execFileSync('git', ['ls-files'], { cwd: ROOT, encoding: 'utf8' }).split('\n')
    expect(tracked.filter((path) => /[.](p12|pfx|pem|key)$/.test(path))).toEqual([])
  })
})
