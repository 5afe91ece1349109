import type { FileConnection } from './connection.ts'
import { runAtHand } from './fixed-query.ts'
import { postBatch, type Writing } from './post.ts'

/**
 * Posts in a file, in one transaction that takes the write lock first; all of it or nothing. Others of this program wait
 * for the connection, other programs for the lock.
 */
export function writeInFile<T>({ db, statements }: FileConnection, act: Writing<T>): Promise<T> {
  return db.connection().execute(async (held) => {
    let open = true
    runAtHand(held, statements)
    statements.prepare('begin').run([])
    try {
      const result = await act(held, (batch) => (open ? postBatch(held, batch) : Promise.reject(new Error('The transaction in which this was to be posted is over.'))))
      open = false
      statements.prepare('commit').run([])
      return result
    } catch (error) {
      open = false
      statements.prepare('rollback').run([])
      throw error
    }
  })
}
