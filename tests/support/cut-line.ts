import { connect, createServer, type Socket } from 'node:net'
import { once } from 'node:events'

/** What becomes of a commit on the line: it passes; the server gets it and its answer is lost; or it is lost itself. */
export type Fate = 'passes' | 'answer lost' | 'lost'

/** A line to a server that breaks at the worst moment. */
export interface CutLine {
  readonly port: number
  /** Of the next commit; those after it pass again. Resolves when it came. */
  nextCommit(fate: Fate): Promise<void>
  /** Whether the line takes connections at all, once it broke. */
  reconnects(does: boolean): void
  close(): Promise<void>
}

/** COMMIT as a simple query: Q, the length of the message, the text and a zero. @see https://www.postgresql.org/docs/15/protocol-message-formats.html */
const COMMIT = Buffer.from('commit\0')

/** Passes everything on to a server on this machine, except what it is told not to. */
export async function cutLine(serverPort: number): Promise<CutLine> {
  let fate: Fate = 'passes'
  let open = true
  let mayReconnect = true
  let came = (): void => undefined
  const sockets = new Set<Socket>()
  const line = createServer((client) => {
    if (!open) { client.destroy(); return }
    const server = connect(serverPort, '127.0.0.1')
    for (const socket of [client, server]) { sockets.add(socket); socket.on('error', () => undefined).on('close', () => { sockets.delete(socket) }) }
    let muted = false
    client.on('data', (data) => {
      if (fate === 'passes' || !data.includes(COMMIT)) { server.write(data); return }
      if (fate === 'lost') client.destroy()
      else { muted = true; server.write(data) }
      fate = 'passes'
      came()
      open = mayReconnect
      if (!muted) server.destroy()
    })
    server.on('data', (data) => {
      if (!muted) { client.write(data); return }
      client.destroy()
      server.destroy()
    })
    client.on('close', () => { server.destroy() })
    server.on('close', () => { client.destroy() })
  })
  line.listen(0, '127.0.0.1')
  await once(line, 'listening')
  const address = line.address()
  if (address === null || typeof address === 'string') throw new Error('The line has no port.')
  return {
    port: address.port,
    nextCommit: (next) => {
      fate = next
      return new Promise((resolve) => { came = resolve })
    },
    reconnects: (does) => { mayReconnect = does; open = true },
    close: async () => {
      for (const socket of sockets) socket.destroy()
      line.close()
      await once(line, 'close')
    },
  }
}
