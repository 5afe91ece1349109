import { CallCancelled, RefusedByMain, type Bridge } from '../bridge/bridge.ts'

/** What the window does when the other side says that nobody may work just now. */
export interface Door {
  /** The desk is locked: settles when it is open again, rejects when somebody else is at it. */
  readonly opened: () => Promise<void>
  /** Nobody is signed in any more. */
  readonly left: () => void
}

/**
 * A bridge that waits out a locked desk: a call that is refused for it is made again once the desk is unlocked, so that
 * nothing under the lock breaks off and no draft is lost.
 */
export function waitingBridge(bridge: Bridge, door: Door): Bridge {
  return {
    async call(name, input, options = {}) {
      for (;;) {
        try {
          return await bridge.call(name, input, options)
        } catch (error) {
          const code = error instanceof RefusedByMain ? error.findings[0]?.code : undefined
          if (code === 'session-needed') door.left()
          if (code !== 'session-locked') throw error
          await orGivenUp(door.opened(), options.signal)
        }
      }
    },
  }
}

function orGivenUp(opened: Promise<void>, signal: AbortSignal | undefined): Promise<void> {
  if (signal === undefined) return opened
  return new Promise((resolve, reject) => {
    const giveUp = (): void => reject(new CallCancelled())
    if (signal.aborted) giveUp()
    signal.addEventListener('abort', giveUp, { once: true })
    opened.then(resolve, reject).finally(() => signal.removeEventListener('abort', giveUp))
  })
}
