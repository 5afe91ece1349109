import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import { ENTRY_BODIES, ENTRY_KINDS, trailGroupOf } from '../../../core/ledger/index.ts'
import { fieldInWords } from '../../../renderer/ledger/body-rows.ts'
import { words } from '../../../renderer/words/en.ts'

type Schema = z.core.JSONSchema.JSONSchema

/** The paths at which a body can change; a list is one field. */
function pathsIn(schema: Schema, path: readonly string[] = []): readonly string[] {
  const either = [...schema.anyOf ?? [], ...schema.oneOf ?? []]
  if (either.length > 0) return either.flatMap((one) => pathsIn(one as Schema, path))
  if (schema.properties === undefined) return [path.join('.')]
  return Object.entries(schema.properties).flatMap(([name, member]) => pathsIn(member as Schema, [...path, name]))
}

describe('the fields of the set-up in words', () => {
  const paths = [...new Set(ENTRY_KINDS.filter((kind) => trailGroupOf(kind) === 'set-up').flatMap((kind) => pathsIn(z.toJSONSchema(ENTRY_BODIES[kind]))))]

  it('are all there, and no other', () => {
    expect(Object.keys(words.ledger.changes.fields).toSorted()).toEqual(paths.toSorted())
  })

  it('are told apart within one kind', () => {
    const [kinds, said] = [new Set(paths.map((path) => path.split('.')[0])), (kind: string | undefined) => paths.filter((path) => path.split('.')[0] === kind).map(fieldInWords)]
    for (const kind of kinds) expect(new Set(said(kind)).size, kind).toBe(said(kind).length)
  })

  it('a field that no sheet has is its path in words', () => {
    expect(fieldInWords('tank.capacityTable.somethingNew')).toBe('tank, capacity table, something new')
  })

  it('of a table are counted, and whether the first or the only one is told', () => {
    const { rows } = words.ledger.changes
    expect([rows({ differ: 2, before: 121, after: 121 }), rows({ differ: 1, before: 121, after: 121 }), rows({ differ: 1, before: 121, after: 122 }), rows({ differ: 3201, before: 1481, after: 3201 })])
      .toEqual(['2 of 121 rows differ; the first:', '1 of 121 rows differs', '1 row differs; 121 before, 122 now', '3201 rows differ; 1481 before, 3201 now; the first:'])
  })
})
