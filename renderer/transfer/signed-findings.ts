import type { SpokenFinding } from '../bridge/bridge.ts'
import { lineOfPath } from '../gauge/field-kinds.ts'
import { sayByName } from '../gauge/placed-findings.ts'
import { words } from '../words/en.ts'

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
    const part = partOf(signer?.[2])
    if (signer) errors.set(`signers.${signer[1]}.${part}`, sayByName(finding.message, finding.path, words.transfer.signing[part]))
    else if (finding.path === 'signers') errors.set('signers.1.identity', sayByName(finding.message, finding.path, words.transfer.signing.second))
    else elsewhere.push(finding)
  }
  return { errors, elsewhere }
}

function partOf(part: string | undefined): 'identity' | 'role' | 'passphrase' {
  return part === 'role' || part === 'passphrase' ? part : 'identity'
}

/** The field of the sheet that a refused path belongs to: `ticket.opening.level.ullage` → `opening.level`. */
export function fieldOfSignedFinding(path: string): string {
  const plain = path.replace(/^(ticket|transfer|input)\./, '')
  const gauge = /^(opening|closing)(?:\.(.+))?$/.exec(plain)
  if (!gauge) return plain
  return `${gauge[1]}.${lineOfPath(gauge[2] ?? 'at') ?? 'at'}`
}
