import { createContext, use, useEffect, useRef } from 'react'
import { FaultInMain, type RefusedByMain } from './bridge.ts'

type Heard = (wasAway: boolean) => void

/** Hears when the other side answers, so that a question which broke is asked again without anybody's doing. */
export class Reach {
  readonly #heard = new Set<Heard>()

  /** Tells every answer to the question where the ledger ends. @returns how to stop listening */
  listen(heard: Heard): () => void {
    this.#heard.add(heard)
    return () => { this.#heard.delete(heard) }
  }

  /** The other side answered; `wasAway` when it did not the time before. */
  answered(wasAway: boolean): void {
    for (const heard of [...this.#heard]) heard(wasAway)
  }
}

/** Null where nobody asks where the ledger ends, as a component alone does. */
export const ReachContext = createContext<Reach | null>(null)

/**
 * Asks again what broke, once the other side answers: at the first answer since, and whenever it was away and is back. What
 * breaks though everything else is answered is tried once and then left to the person; what was refused is not asked again.
 * @param error why it failed; null as long as it did not
 * @param answered whether there is an answer now
 */
export function useAgainWhenBack(error: RefusedByMain | FaultInMain | null, answered: boolean, again: () => void): void {
  const reach = use(ReachContext)
  const tried = useRef(false)
  const broken = error instanceof FaultInMain
  useEffect(() => { if (answered) tried.current = false }, [answered])
  useEffect(() => {
    if (!broken || reach === null) return undefined
    return reach.listen((wasAway) => {
      if (tried.current && !wasAway) return
      tried.current = true
      again()
    })
  }, [broken, reach, again])
}
