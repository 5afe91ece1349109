import { createServer } from 'node:http'
import { once } from 'node:events'
import { LOOPBACK } from './server.ts'

/**
 * Why nothing can be served at a port of this machine, in a sentence that says what to do instead; undefined where it can.
 * @param port 0 for any that is free
 */
export async function whyNotServe(port: number): Promise<string | undefined> {
  const server = createServer().listen(port, LOOPBACK)
  try {
    await once(server, 'listening')
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : undefined
    if (code === 'EADDRINUSE') return `Port ${port} is already taken, perhaps by this program in another window: end what holds it, or leave --port out and take any that is free.`
    if (code === 'EACCES') return `Port ${port} may not be used by this account: take one from 1024 upwards, or leave --port out and take any that is free.`
    throw error
  }
  await new Promise((resolve) => server.close(resolve))
  return undefined
}
