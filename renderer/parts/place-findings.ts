/** What was refused, as every shell answers it. */
interface Spoken { readonly path: string; readonly message: string }

/** A field of a sheet: its DOM id, and its name for people. */
export interface FieldPlace { readonly id: string; readonly label: string }

/** Findings on the fields they belong to, and those that belong to none. */
export interface PlacedOnFields<F extends Spoken> { readonly errors: ReadonlyMap<string, string>; readonly others: readonly F[] }

/**
 * Puts what an operation refused beside the fields of a sheet; the field's name takes the place of the path.
 * @param places path into the operation's input → field; the longest path that fits is taken
 */
export function placeFindings<F extends Spoken>(findings: readonly F[], places: Readonly<Record<string, FieldPlace>>): PlacedOnFields<F> {
  const errors = new Map<string, string>()
  const others: F[] = []
  const paths = Object.keys(places).toSorted((a, b) => b.length - a.length)
  for (const finding of findings) {
    const path = paths.find((start) => finding.path === start || finding.path.startsWith(`${start}.`))
    const place = path === undefined ? undefined : places[path]
    if (place === undefined) others.push(finding)
    else if (!errors.has(place.id)) errors.set(place.id, finding.message.replace(finding.path, place.label))
  }
  return { errors, others }
}
