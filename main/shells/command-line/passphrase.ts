import type { ReadStream } from 'node:tty'

const ENTER = /[\r\n\u0004]/
const CTRL_C = '\u0003'
const BACKSPACE = /[\b\u007f]/

/**
 * A line typed on a terminal that does not show it. Undefined when it is broken off by Ctrl-C.
 * @param write where the question is written
 */
export function askWithoutEcho(input: Pick<ReadStream, 'setRawMode' | 'on' | 'off' | 'pause' | 'resume'>, write: (text: string) => void, question: string): Promise<string | undefined> {
  write(question)
  input.setRawMode(true)
  input.resume()
  return new Promise((resolve) => {
    let typed: readonly string[] = []
    const heard = (bytes: Buffer): void => {
      for (const letter of bytes.toString('utf8')) {
        if (letter === CTRL_C) return done(undefined)
        if (ENTER.test(letter)) return done(typed.join(''))
        typed = BACKSPACE.test(letter) ? typed.slice(0, -1) : [...typed, letter]
      }
    }
    const done = (line: string | undefined): void => {
      input.off('data', heard)
      input.setRawMode(false)
      input.pause()
      write('\n')
      resolve(line)
    }
    input.on('data', heard)
  })
}
