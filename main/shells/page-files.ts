import { readdir, readFile } from 'node:fs/promises'
import { extname, join, relative, sep } from 'node:path'

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8', '.js': 'text/javascript; charset=utf-8', '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml', '.png': 'image/png', '.ico': 'image/x-icon', '.json': 'application/json',
  '.woff2': 'font/woff2', '.woff': 'font/woff', '.map': 'application/json', '.txt': 'text/plain; charset=utf-8',
}

/** A file of the window, as it is served. */
export interface PageFile { readonly bytes: Buffer<ArrayBuffer>; readonly type: string }

/** Gives the file at a path of an address, or undefined. */
export type PageFiles = (path: string) => Promise<PageFile | undefined>

/**
 * The built window in a folder. Only files that were found there at the start are served, so a path can lead nowhere
 * else.
 */
export async function pageFilesIn(folder: string): Promise<PageFiles> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true }).catch(() => [])
  const known = new Map<string, string>(entries.filter((entry) => entry.isFile()).map((entry) => {
    const file = join(entry.parentPath, entry.name)
    return [`/${relative(folder, file).split(sep).join('/')}`, file]
  }))
  return async (path) => {
    const file = known.get(path === '/' ? '/index.html' : path)
    return file === undefined ? undefined : { bytes: await readFile(file), type: TYPES[extname(file)] ?? 'application/octet-stream' }
  }
}
