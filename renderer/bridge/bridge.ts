import type { Finding } from '../../core/refusal/index.ts'
import type { InputOf, OperationName, OutputOf, Progress } from '../../main/operations/contracts/index.ts'

/** A finding with its sentence, as every shell answers it. */
export interface SpokenFinding extends Omit<Finding, 'code' | 'clause'> {
  readonly code: string
  readonly clause: string
  readonly message: string
}

export interface CallOptions {
  readonly progress?: (step: Progress) => void
  readonly signal?: AbortSignal
  /** The call must arrive even if the window closes right after it. Small inputs only. */
  readonly outlivesWindow?: boolean
}

/** The only way out of the window. Every call settles: with a result, or with one of the three errors below. */
export interface Bridge {
  call<N extends OperationName>(name: N, input: InputOf<N>, options?: CallOptions): Promise<OutputOf<N>>
}

/** The input was refused; the person can mend it. */
export class RefusedByMain extends Error {
  readonly findings: readonly SpokenFinding[]
  constructor(findings: readonly SpokenFinding[]) {
    super(findings.map((finding) => finding.message).join('\n'))
    this.name = 'RefusedByMain'
    this.findings = findings
  }
}

/** Something broke on the other side, or on the way there. */
export class FaultInMain extends Error {
  constructor(message: string) {
    super(message)
    this.name = 'FaultInMain'
  }
}

/** The window gave the call up before it was answered. */
export class CallCancelled extends Error {
  constructor() {
    super('Cancelled.')
    this.name = 'CallCancelled'
  }
}
