/** A fingerprint in groups of eight, so that two people can read it to each other. */
export function groupedFingerprint(hex: string): string {
  return hex.match(/.{1,8}/g)?.join(' ') ?? hex
}
