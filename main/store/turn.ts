/** One after another in the order in which they asked; whoever was let in says when he is done. */
export class Turn {
  #taken = false
  readonly #waiting: (() => void)[] = []

  async take(): Promise<void> {
    if (this.#taken) await new Promise<void>((letIn) => this.#waiting.push(letIn))
    this.#taken = true
  }

  give(): void {
    const next = this.#waiting.shift()
    if (next === undefined) this.#taken = false
    else next()
  }
}
