import type { InputOf, OperationName } from '../../main/operations/contracts/index.ts'
import { RefusedByMain, type Bridge } from './bridge.ts'

/** Prepares an operation for somebody else to approve; what is refused in it is refused as if it had been done. */
export async function prepare<N extends OperationName>(bridge: Bridge, operation: N, input: InputOf<N>, signal: AbortSignal): Promise<readonly string[]> {
  try {
    return (await bridge.call('propose', { operation, input: JSON.parse(JSON.stringify(input)), note: '' }, { signal })).posts
  } catch (error) {
    if (!(error instanceof RefusedByMain)) throw error
    throw new RefusedByMain(error.findings.map((finding) => {
      const path = finding.path.replace(/^input\./, '')
      return { ...finding, path, message: finding.message.replace(finding.path, path) }
    }))
  }
}
