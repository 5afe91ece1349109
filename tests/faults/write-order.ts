import { spawnSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { basename, join } from 'node:path'

/** One thing a program asked of the disk, or said on its output, in the order in which it did. */
export type Step =
  | { readonly what: 'write'; readonly file: string; readonly at: number; readonly bytes: Buffer }
  | { readonly what: 'truncate'; readonly file: string; readonly size: number }
  | { readonly what: 'sync'; readonly file: string }
  | { readonly what: 'said'; readonly line: string }

const CALL = /^(\w+)\((\d+)(?:<([^>]*)>)?(?:, (.*))?\)\s+= (-?\d+)/
const HEX = /\\x([0-9a-f]{2})/g

/** Whether this machine lets one program watch what another asks of the system. */
export function canWatch(): boolean {
  return spawnSync('strace', ['-o', '/dev/null', 'true']).status === 0
}

/** Runs a program and writes down what its main thread asked of the disk. */
export function stepsOf(args: readonly string[], folder: string): readonly Step[] {
  const trace = join(folder, 'trace.txt')
  const watched = ['-y', '-xx', '-s', '1000000', '-e', 'trace=pwrite64,write,ftruncate,fsync,fdatasync', '-o', trace, process.execPath, ...args]
  const ran = spawnSync('strace', watched, { encoding: 'utf8', maxBuffer: 1 << 28, timeout: 120_000 })
  if (ran.status !== 0) throw new Error(`The watched program ended with ${String(ran.status)}: ${ran.stderr}`)
  return readFileSync(trace, 'latin1').split('\n').flatMap(stepOf)
}

function stepOf(line: string): readonly Step[] {
  const [, call = '', descriptor = '', path = '', rest = '', answer = ''] = CALL.exec(line) ?? []
  if (call === '' || Number(answer) < 0) return []
  const file = basename(unescaped(path).toString('utf8'))
  switch (call) {
    case 'pwrite64': {
      const [text = '', length = '', at = ''] = rest.split(', ')
      const bytes = unescaped(text.slice(1, -1))
      if (bytes.length !== Number(length) || Number(answer) !== bytes.length) throw new Error(`A write of ${length} bytes was seen as ${bytes.length}, answered ${answer}`)
      return [{ what: 'write', file, at: Number(at), bytes }]
    }
    case 'ftruncate': return [{ what: 'truncate', file, size: Number(rest) }]
    case 'fsync': case 'fdatasync': return [{ what: 'sync', file }]
    default: return descriptor === '1' ? unescaped(rest.split(', ')[0]?.slice(1, -1) ?? '').toString('utf8').split('\n').filter((said) => said !== '').map((said) => ({ what: 'said', line: said })) : []
  }
}

function unescaped(text: string): Buffer {
  return Buffer.from(text.replace(HEX, (_, hex: string) => String.fromCharCode(parseInt(hex, 16))), 'latin1')
}
