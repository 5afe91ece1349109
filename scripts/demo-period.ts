import type { InputOf, OperationName, OutputOf } from '../main/operations/contracts/index.ts'

type Ask = <N extends OperationName>(name: N, input: InputOf<N>) => Promise<OutputOf<N>>

const CLOSER = { name: 'Mara Teague', identity: 'mara-teague' }
const WHY = 'A valve between TK-201 and TK-202 did not hold; the product as a whole is within its limit'

/** Opens September and closes it: each check that does not hold is signed off with its reason. Gives the lines to print. */
export async function closedPeriod(ask: Ask, period: { readonly from: string; readonly to: string }, passphrase: string): Promise<{ readonly name: string; readonly lines: readonly string[] }> {
  const by = CLOSER.name
  const { period: { name } } = await ask('open-period', { ...period, by })
  const { checks } = await ask('closing-checks', { period: name })
  const failing = checks.filter(({ holds }) => !holds)
  const { seal, sealHash } = await ask('close-period', { period: name, signOffs: failing.map(({ check }) => ({ check, reason: WHY })), identity: CLOSER.identity, passphrase, by })
  const verified = await ask('verify-seal', { period: name })
  return {
    name,
    lines: [
      `Period ${name}: closed by ${by}; ${String(checks.length - failing.length)} of ${String(checks.length)} checks hold, ${String(failing.length)} signed off with a reason`,
      ...failing.map(({ check, detail }) => `  not: ${check} (${detail})`),
      `  seal ${sealHash}, over head ${String(seal.head.seq)} ${seal.head.hash}`,
      `  ${verified.valid ? 'its signature holds, and head, counts and balances come out again from the entries' : 'THE SEAL DOES NOT HOLD'}`,
    ],
  }
}
