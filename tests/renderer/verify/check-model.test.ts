import { expect, it } from 'vitest'
import { inOrderOfConcern } from '../../../renderer/verify/check-model.ts'

it('puts what does not hold first and keeps the order otherwise', () => {
  const check = (name: string, holds: boolean) => ({ check: name, holds, detail: '' })
  expect(inOrderOfConcern([check('a', true), check('b', false), check('c', true), check('d', false)]).map((one) => one.check)).toEqual(['b', 'd', 'a', 'c'])
})
