import type { IpcMain, IpcMainEvent, IpcMainInvokeEvent } from 'electron'
import { fault, type Answer } from '../../operations/answer.ts'
import { callOperation } from '../../operations/call-operation.ts'
import type { Context } from '../../operations/context.ts'
import { CALL, CANCEL, STEP } from './channels.ts'
import { refuseSender } from './origin.ts'

/** Answers the window's calls until the program ends. Gives back how to cancel all that run. */
export function answerWindow(ipc: Pick<IpcMain, 'handle' | 'on'>, context: Context): () => void {
  const running = new Map<string, AbortController>()
  ipc.handle(CALL, (event, name: unknown, input: unknown, callId: unknown) => answer(event, name, input, callId, running, context))
  ipc.on(CANCEL, (event: IpcMainEvent, callId: unknown) => {
    if (typeof callId === 'string') running.get(keyOf(event, callId))?.abort()
  })
  return () => running.forEach((abort) => abort.abort())
}

async function answer(
  event: IpcMainInvokeEvent, name: unknown, input: unknown, callId: unknown, running: Map<string, AbortController>, context: Context,
): Promise<Answer> {
  const refused = refuseSender(event, name)
  if (refused !== undefined || typeof name !== 'string' || typeof callId !== 'string') {
    context.log(`${context.now()} a message was not answered: ${refused ?? 'it bears no id'}`)
    return fault('This call was not answered.')
  }
  const key = keyOf(event, callId)
  if (running.has(key)) return fault('This call runs already.')
  const abort = new AbortController()
  running.set(key, abort)
  try {
    return await callOperation(name, input, context, {
      progress: (step) => { if (!event.sender.isDestroyed()) event.sender.send(STEP, callId, step) },
      signal: abort.signal,
    })
  } finally {
    running.delete(key)
  }
}

/** A window cancels its own calls only. */
function keyOf(event: { readonly sender: { readonly id: number } }, callId: string): string {
  return `${event.sender.id} ${callId}`
}
