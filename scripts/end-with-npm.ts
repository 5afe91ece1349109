import { readFileSync } from 'node:fs'

const EVERY = 500

/**
 * Ends this program when the npm that started it, or the shell between them, is gone. npm hands a signal to that shell alone,
 * which ends and leaves the program running behind; so it looks now and then whether both are there. A program that npm did
 * not start is left alone.
 * @param every how often it looks [ms]
 */
export function endWithNpm(every = EVERY): void {
  if (process.env['npm_lifecycle_event'] === undefined) return
  const shell = process.ppid
  const npm = parentOf(shell)
  const timer = setInterval(() => {
    if (process.ppid === shell && isThere(shell) && (npm === undefined || isThere(npm))) return
    clearInterval(timer)
    process.kill(process.pid, 'SIGTERM')
  }, every)
  timer.unref()
}

/** The parent of another process, where the machine tells it in /proc; undefined elsewhere, and for what has none but the first process. */
function parentOf(pid: number): number | undefined {
  try {
    const parent = Number(/^PPid:\s+(\d+)$/m.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1])
    return parent > 1 ? parent : undefined
  } catch {
    return undefined
  }
}

function isThere(pid: number): boolean {
  try {
    return process.kill(pid, 0)
  } catch (error) {
    // a process of somebody else is there
    return error instanceof Error && 'code' in error && error.code === 'EPERM'
  }
}
