import type { SpokenFinding } from '../bridge/bridge.ts'
import { lineOfPath } from '../gauge/field-kinds.ts'

interface PlacedSigned {
  /** Field of the panel → sentence. */
  readonly errors: ReadonlyMap<string, string>
  /** What concerns the sheet below. */
  readonly elsewhere: readonly SpokenFinding[]
}

const OF_SIGNER = /^signers\.(\d)(?:\.(identity|role|passphrase))?/

/** Puts what `post-ticket` refused on the panel's fields; the rest belongs to the sheet. */
export function placeSigned(findings: readonly SpokenFinding[]): PlacedSigned {
  const errors = new Map<string, string>()
  const elsewhere: SpokenFinding[] = []
  for (const finding of findings) {
    const signer = OF_SIGNER.exec(finding.path)
    if (signer) errors.set(`signers.${signer[1]}.${signer[2] ?? 'identity'}`, finding.message)
    else if (finding.path === 'signers') errors.set('signers.1.identity', finding.message)
    else elsewhere.push(finding)
  }
  return { errors, elsewhere }
}

/** The field of the sheet that a refused path belongs to: `ticket.opening.level.ullage` → `opening.level`. */
export function fieldOfSignedFinding(path: string): string {
  const plain = path.replace(/^(ticket|transfer|input)\./, '')
  const gauge = /^(opening|closing)(?:\.(.+))?$/.exec(plain)
  if (!gauge) return plain
  return `${gauge[1]}.${lineOfPath(gauge[2] ?? 'at') ?? 'at'}`
}
