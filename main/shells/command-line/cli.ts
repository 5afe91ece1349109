import { addAbortSignal } from 'node:stream'
import { text } from 'node:stream/consumers'
import { runCommandLine } from './command-line.ts'
import { askWithoutEcho } from './passphrase.ts'

const INTERRUPTED = 130

/** The command line of this process. The first Ctrl-C cancels what runs, the second ends the process. */
export async function main(): Promise<void> {
  const abort = new AbortController()
  const interrupt = (): void => {
    if (abort.signal.aborted) process.exit(INTERRUPTED)
    abort.abort()
  }
  process.on('SIGINT', interrupt)
  process.on('SIGTERM', interrupt)
  process.exitCode = await runCommandLine(process.argv.slice(2), {
    environment: process.env,
    standardInput: () => text(addAbortSignal(abort.signal, process.stdin)),
    isTerminal: process.stdin.isTTY === true,
    askPassphrase: async (question) => (process.stdin.isTTY === true ? askWithoutEcho(process.stdin, (out) => process.stderr.write(out), question) : undefined),
    write: (out) => process.stdout.write(out),
    writeError: (out) => process.stderr.write(out),
    errorIsTerminal: process.stderr.isTTY === true,
    signal: abort.signal,
  })
  process.off('SIGINT', interrupt)
  process.off('SIGTERM', interrupt)
}
