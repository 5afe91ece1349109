import { spawn, type ChildProcess } from 'node:child_process'
import { createInterface } from 'node:readline'

/** A desk that posts in a process of its own. */
export interface Desk {
  readonly process: ChildProcess
  /** Numbers and hashes of the tickets that it was told are booked. */
  readonly acknowledged: Map<string, string>
  readonly faults: string[]
  /** Its exit code. */
  readonly ended: Promise<number | null>
}

/** Starts a desk that posts so many tickets. */
export function startDesk(program: string, address: string, tickets: number): Desk {
  const child = spawn(process.execPath, [program, address, String(tickets)], { stdio: ['ignore', 'pipe', 'inherit'] })
  const [acknowledged, faults] = [new Map<string, string>(), [] as string[]]
  createInterface({ input: child.stdout }).on('line', (line) => {
    const [number = '', sha256 = ''] = line.split(' ')
    if (number === 'fault') faults.push(line.slice(6))
    // the last line of a killed desk may be cut short: what was not said whole was not acknowledged
    else if (/^[0-9a-f]{64}$/.test(sha256)) acknowledged.set(number, sha256)
  })
  return { process: child, acknowledged, faults, ended: new Promise((resolve) => { child.on('close', (code) => { resolve(code) }) }) }
}

/** What all of them were told, each number once. */
export function togetherSaid(desks: readonly Desk[]): Map<string, string> {
  const all = desks.flatMap((desk) => [...desk.acknowledged])
  const twice = all.filter(([number], i) => all.findIndex(([other]) => other === number) !== i)
  if (twice.length > 0) throw new Error(`Two desks were given one number: ${twice.join('; ')}`)
  return new Map(all)
}
