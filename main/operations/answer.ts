import { wording, type Finding } from '../../core/refusal/index.ts'

/** A finding with its sentence, as every shell answers it. */
export interface SpokenFinding extends Finding {
  readonly message: string
}

/**
 * What a call comes to, the same in every shell: a result; a refusal that the person can mend; or a fault of ours.
 */
export type Answer<T = unknown> =
  | { readonly result: T }
  | { readonly refused: { readonly findings: readonly SpokenFinding[] } }
  | { readonly fault: { readonly message: string } }

/** The answer to an input that cannot be used. */
export function refusal(findings: readonly Finding[]): Extract<Answer, { refused: unknown }> {
  return {
    refused: {
      findings: findings.map(({ code, path, value, limit, clause }) => ({ code, message: wording({ code, path, value, limit, clause }), path, value, limit, clause })),
    },
  }
}

/** The answer when something broke here. */
export function fault(message: string): Extract<Answer, { fault: unknown }> {
  return { fault: { message } }
}
