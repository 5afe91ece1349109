import type { OutputOf } from '../../main/operations/contracts/index.ts'
import { newProbe, probeFormSchema, type ProbeForm } from './probe-form.ts'

/** The draft of a tank's probe. */
export function probeDraft(tank: string): string {
  return `probe-${tank}`
}

/** The probe's sheet as last kept for a tank; a new one where none is kept. */
export function keptProbe(drafts: OutputOf<'list-drafts'>['drafts'], tank: string): ProbeForm {
  const kept = probeFormSchema.safeParse(drafts.find(({ id }) => id === probeDraft(tank))?.body)
  return kept.success ? kept.data : newProbe(tank)
}
