import { accepted, type Outcome } from '../refusal/index.ts'
import type { Tank } from './tank.ts'

export function checkTank(tank: Tank, path = 'tank'): Outcome<Tank> {
  void path
  return accepted(tank)
}
