import { isOperation } from '../../operations/call-operation.ts'

/** The window's own scheme and origin; its files come from the program itself. */
export const SCHEME = 'app'
export const ORIGIN = `${SCHEME}://dipledger`
export const START_PAGE = `${ORIGIN}/`

/** The parts of a message's sender that are looked at. */
export interface Sender {
  readonly senderFrame: { readonly url: string; readonly parent: unknown } | null
}

/** Whether an address lies within the window's own origin. */
export function isOwnAddress(address: string): boolean {
  const url = URL.parse(address)
  return url !== null && url.protocol === `${SCHEME}:` && url.host === 'dipledger' && url.username === '' && url.port === ''
}

/**
 * Why a message is not answered: it must come from the main frame, from our own pages, and name an operation.
 * Undefined when it may be answered.
 */
export function refuseSender(sender: Sender, name: unknown): string | undefined {
  if (sender.senderFrame === null || sender.senderFrame.parent !== null) return 'the sender is not the main frame'
  if (!isOwnAddress(sender.senderFrame.url)) return 'the sender is not a page of Dipledger'
  if (typeof name !== 'string' || !isOperation(name)) return 'the message names no operation'
  return undefined
}
