import { accepted, andThen, refused, type Outcome } from '../refusal/index.ts'
import { degC, parseTemperature } from '../units/index.ts'

/**
 * Temperature at a module [°C]; anything outside −60 to 300 is a slip of the pen or of the unit. Ours, no source.
 * Refuses `out-of-range` and texts that cannot be read.
 * @param text as written
 * @param path where it stood
 * @source HOUSE gauge snapshot
 */
export function moduleTemperature(text: string, path: string): Outcome<number> {
  return andThen(parseTemperature(text, path), (read) => {
    const t = degC(read)
    return t >= -60 && t <= 300 ? accepted(t) : refused({ code: 'out-of-range', path, value: text, limit: '-60 to 300 degC', clause: 'HOUSE gauge snapshot' })
  })
}
