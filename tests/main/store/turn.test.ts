import { describe, expect, it } from 'vitest'
import { Turn } from '../../../main/store/turn.ts'

describe('a turn', () => {
  it('lets in one at a time, in the order in which they asked', async () => {
    const turn = new Turn()
    const came: string[] = []
    const visit = async (name: string): Promise<void> => {
      await turn.take()
      came.push(`${name} in`)
      await Promise.resolve()
      came.push(`${name} out`)
      turn.give()
    }
    await Promise.all(['a', 'b', 'c'].map(visit))
    await visit('d')
    expect(came).toEqual(['a in', 'a out', 'b in', 'b out', 'c in', 'c out', 'd in', 'd out'])
  })

  it('is not taken over by one who asks in the very moment in which it is handed on', async () => {
    const turn = new Turn()
    let inside = 0
    const most: number[] = []
    const visit = async (): Promise<void> => {
      await turn.take()
      inside += 1
      most.push(inside)
      await Promise.resolve()
      inside -= 1
      turn.give()
    }
    const first = visit()
    const second = visit()
    await first
    await Promise.all([second, visit(), visit()])
    expect(Math.max(...most)).toBe(1)
  })
})
