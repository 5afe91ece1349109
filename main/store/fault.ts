/** What is wrong with the place where a ledger is kept, in words for whoever must mend it. */
export class LedgerFault extends Error {
  /** The file, or host:port/database of the server. */
  readonly path: string

  constructor(path: string, message: string, cause?: unknown) {
    super(message, { cause })
    this.name = new.target.name
    this.path = path
  }
}
