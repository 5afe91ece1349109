import { readEnvelope, settle } from './answer.ts'
import { CallCancelled, FaultInMain, type Bridge, type CallOptions } from './bridge.ts'
import type { Progress } from '../../main/operations/contracts/index.ts'

/** What the preload puts on `window`: no more than this. */
export interface PreloadBridge {
  /** Answers `{ result }`, `{ refused }` or `{ fault }`. */
  call(name: string, input: unknown, callId: string): Promise<unknown>
  cancel(callId: string): void
  /** Tells every step of every call; gives back how to stop listening. */
  watch(listener: (callId: string, step: Progress) => void): () => void
}

/** The bridge of the desktop window. */
export function electronBridge(preload: PreloadBridge, newCallId: () => string = () => crypto.randomUUID()): Bridge {
  return {
    async call(name, input, options = {}) {
      const callId = newCallId()
      const stopWatching = preload.watch((id, step) => {
        if (id === callId) options.progress?.(step)
      })
      try {
        const answered = preload.call(name, input, callId).catch((error: unknown) => {
          throw new FaultInMain(error instanceof Error ? error.message : String(error))
        })
        return settle(name, readEnvelope(await orCancelled(answered, options, () => preload.cancel(callId))))
      } finally {
        stopWatching()
      }
    },
  }
}

/** The answer, or {@link CallCancelled} at once when the window gives up; a late answer is then of no interest. */
function orCancelled<T>(answered: Promise<T>, { signal }: CallOptions, cancel: () => void): Promise<T> {
  if (!signal) return answered
  return new Promise<T>((resolve, reject) => {
    const giveUp = (): void => {
      cancel()
      reject(new CallCancelled())
    }
    if (signal.aborted) giveUp()
    signal.addEventListener('abort', giveUp, { once: true })
    answered.then(resolve, reject).finally(() => signal.removeEventListener('abort', giveUp))
  })
}
