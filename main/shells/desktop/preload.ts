import { contextBridge, ipcRenderer, type IpcRendererEvent } from 'electron'
import { OPERATION_NAMES, type Progress } from '../../operations/contracts/index.ts'
import { CALL, CANCEL, STEP } from './channels.ts'

const names: ReadonlySet<string> = new Set(OPERATION_NAMES)

/** All that the page can reach: the operations of the table, and nothing of Electron. */
contextBridge.exposeInMainWorld('dipledger', {
  async call(name: string, input: unknown, callId: string): Promise<unknown> {
    if (!names.has(name)) throw new Error(`There is no operation “${String(name)}”.`)
    return ipcRenderer.invoke(CALL, name, input, String(callId))
  },
  cancel(callId: string): void {
    ipcRenderer.send(CANCEL, String(callId))
  },
  watch(listener: (callId: string, step: Progress) => void): () => void {
    const heard = (_event: IpcRendererEvent, callId: string, step: Progress): void => listener(callId, step)
    ipcRenderer.on(STEP, heard)
    return () => { ipcRenderer.off(STEP, heard) }
  },
})
