/** A key, what it does in words, and the doing. */
export interface KeyEntry {
  /** `ctrl+enter`, `alt+1`, `?`, `escape`. */
  readonly combo: string
  readonly label: string
  /** Under which heading the list shows it. */
  readonly group: string
  readonly act: () => void
}

interface Pressed { readonly key: string; readonly code: string; readonly ctrlKey: boolean; readonly metaKey: boolean; readonly altKey: boolean; readonly shiftKey: boolean }

/** The combination that was pressed, spelled as in {@link KeyEntry}. Digits go by their place on the keyboard. */
export function comboOf({ key, code, ctrlKey, metaKey, altKey, shiftKey }: Pressed): string {
  const digit = /^Digit(\d)$/.exec(code)?.[1]
  const name = altKey && digit ? digit : key.toLowerCase()
  const letter = /^([a-z]|enter|escape|f\d+|arrow\w+)$/.test(name)
  return [(ctrlKey || metaKey) && 'ctrl', altKey && 'alt', shiftKey && letter && 'shift', name].filter(Boolean).join('+')
}

/** How a combination is written for people: `Ctrl+Shift+Z`. */
export function spelled(combo: string): string {
  const names: Readonly<Record<string, string>> = { ctrl: 'Ctrl', alt: 'Alt', shift: 'Shift', enter: 'Enter', escape: 'Esc', pageup: 'Page Up', pagedown: 'Page Down' }
  return combo.split('+').map((part) => names[part] ?? part.toUpperCase()).join('+')
}

/** Keys that act at the moment; the one registered last answers first. */
export class KeyRegistry {
  #entries: readonly KeyEntry[] = []
  #held = 0
  readonly #listeners = new Set<() => void>()

  readonly list = (): readonly KeyEntry[] => this.#entries

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener)
    return () => this.#listeners.delete(listener)
  }

  register(entry: KeyEntry): () => void {
    this.#set([...this.#entries, entry])
    return () => this.#set(this.#entries.filter((other) => other !== entry))
  }

  /** No key acts until what is given back is called: something lies over the whole window. */
  readonly hold = (): (() => void) => {
    this.#held += 1
    return () => { this.#held -= 1 }
  }

  /** Acts on what was pressed; false when no key answers. `writing`: the focus is in a field, where plain keys are text. */
  press(pressed: Pressed, writing: boolean): boolean {
    if (this.#held > 0) return false
    const combo = comboOf(pressed)
    if (writing && /^(shift\+)?[^+]$/.test(combo)) return false
    const entry = this.#entries.findLast((candidate) => candidate.combo === combo)
    entry?.act()
    return entry !== undefined
  }

  #set(entries: readonly KeyEntry[]): void {
    this.#entries = entries
    for (const listener of this.#listeners) listener()
  }
}
