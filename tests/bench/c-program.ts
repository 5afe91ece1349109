import { spawn } from 'node:child_process'
import { createInterface } from 'node:readline'

/** One round of the program in C: nanoseconds of processor time and the sum of its results. */
export interface Round { readonly ns: number; readonly sum: number }

/** The program in C, waiting for rounds. */
export interface CProgram {
  readonly round: () => Promise<Round>
  readonly end: () => void
}

/** Starts the compiled program on a file of points; every call of `round` runs all of them `repeat` times. */
export function startC(binary: string, group: string, pointsFile: string, count: number, repeat: number): CProgram {
  const child = spawn(binary, [group, pointsFile, `${count}`, `${repeat}`], { stdio: ['pipe', 'pipe', 'inherit'] })
  const lines = createInterface({ input: child.stdout })[Symbol.asyncIterator]()
  return {
    round: async () => {
      child.stdin.write('\n')
      const { value, done } = await lines.next()
      if (done === true) throw new Error('the program in C ended before its answer')
      const [ns = NaN, sum = NaN] = value.split(' ').map(Number)
      return { ns, sum }
    },
    end: () => { child.stdin.end() },
  }
}
