import { readEnvelope, settle, stepIn, type Envelope } from './answer.ts'
import { CallCancelled, FaultInMain, type Bridge, type CallOptions } from './bridge.ts'

const CUT = 'The connection to Dipledger broke off. Check that it still runs, then try again.'

/**
 * The bridge of the browser: `POST /op/<name>`, answered by lines of JSON, the last of which holds the result.
 * @param token what the host wants to see in `x-dipledger-token`
 */
export function loopbackBridge(token: string, request: typeof fetch = fetch): Bridge {
  return {
    async call(name, input, options = {}) {
      const last = await guarded(options, async () => {
        const response = await request(`/op/${name}`, {
          method: 'POST', headers: { 'content-type': 'application/json', 'x-dipledger-token': token },
          body: JSON.stringify(input), signal: options.signal ?? null, keepalive: options.outlivesWindow ?? false,
        })
        return lastLine(response, options)
      })
      return settle(name, last)
    },
  }
}

async function guarded(options: CallOptions, act: () => Promise<Envelope>): Promise<Envelope> {
  try {
    return await act()
  } catch (error) {
    if (options.signal?.aborted) throw new CallCancelled()
    if (error instanceof FaultInMain) throw error
    throw new FaultInMain(CUT)
  }
}

/** Hands steps on as they come; gives back the last line. A stream that ends without one was cut. */
async function lastLine(response: Response, options: CallOptions): Promise<Envelope> {
  let rest = ''
  let last: Envelope | undefined
  const take = (line: string): void => {
    if (line.trim() === '') return
    const answer = readEnvelope(parsed(line))
    const step = stepIn(answer)
    if (step) options.progress?.(step)
    else last ??= answer
  }
  if (response.body) {
    const reader = response.body.pipeThrough(new TextDecoderStream()).getReader()
    for (let part = await reader.read(); !part.done; part = await reader.read()) {
      const lines = (rest + part.value).split('\n')
      rest = lines.pop() ?? ''
      lines.forEach(take)
    }
  }
  take(rest)
  if (last) return last
  throw new FaultInMain(response.ok ? CUT : `Dipledger answered ${response.status} ${response.statusText}.`)
}

function parsed(line: string): unknown {
  try {
    return JSON.parse(line)
  } catch {
    return undefined
  }
}
