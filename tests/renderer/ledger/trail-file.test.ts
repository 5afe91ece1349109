import { Buffer } from 'node:buffer'
import { describe, expect, it } from 'vitest'
import { trailFile } from '../../../renderer/ledger/trail-file.ts'

type Asked = Parameters<Parameters<typeof trailFile>[0]>[0]

/** Parts as the other side answers them: the newest rows first, each under its heading, oldest row first within. */
const PARTS = [{ rows: ['5,é', '6,f'], before: 5 }, { rows: [], before: 4 }, { rows: ['2,b', '3,c'], before: 2 }, { rows: ['1,a'], before: null }]
const answers = (format: Asked['format'], parts: typeof PARTS = PARTS) => {
  const asked: Asked[] = []
  const ask = (input: Asked) => {
    const part = parts[asked.length]
    asked.push(input)
    const text = `${format === 'csv' ? 'entry,what\n' : ''}${part?.rows.map((row) => `${row}\n`).join('') ?? ''}`
    return Promise.resolve(part && { name: `part-${asked.length}`, type: format === 'csv' ? 'text/csv' as const : 'application/x-ndjson' as const, entries: part.rows.length, file: Buffer.from(text).toString('base64'), before: part.before })
  }
  return { asked, ask }
}

describe('the whole audit trail as one file', () => {
  it('is put together from its parts, oldest row first, under one heading', async () => {
    const { asked, ask } = answers('csv')
    const file = await trailFile(ask, { format: 'csv', words: 'void' })
    expect(file?.name).toBe('part-1')
    expect(await file?.blob.text()).toBe('entry,what\n1,a\n2,b\n3,c\n5,é\n6,f\n')
    expect(asked.map(({ before, words }) => [before, words])).toEqual([[undefined, 'void'], [5, 'void'], [4, 'void'], [2, 'void']])
    expect(new Set(asked.map(({ rows }) => rows)).size).toBe(1)
  })

  it('as lines of JSON has no heading to take away', async () => {
    const { ask } = answers('json-lines')
    expect(await (await trailFile(ask, { format: 'json-lines' }))?.blob.text()).toBe('1,a\n2,b\n3,c\n5,é\n6,f\n')
  })

  it('is none when a part does not come', async () => {
    const { ask } = answers('csv', PARTS.slice(0, 2))
    expect(await trailFile(ask, { format: 'csv' })).toBeUndefined()
  })
})
