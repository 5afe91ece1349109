import { expect, it } from 'vitest'
import { Reach } from '../../../renderer/bridge/reach.ts'

it('whoever listens hears each answer and whether there was none before, until told not to', () => {
  const reach = new Reach()
  const heard: boolean[] = []
  const stop = reach.listen((wasAway) => { heard.push(wasAway) })
  reach.answered(false)
  reach.answered(true)
  stop()
  reach.answered(true)
  expect(heard).toEqual([false, true])
})

it('who stops listening at an answer does not keep others from hearing it', () => {
  const reach = new Reach()
  const heard: string[] = []
  const stop = reach.listen(() => { heard.push('first'); stop() })
  reach.listen(() => { heard.push('second') })
  reach.answered(false)
  reach.answered(false)
  expect(heard).toEqual(['first', 'second', 'second'])
})
