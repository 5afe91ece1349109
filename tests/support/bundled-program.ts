import { existsSync, readdirSync, rmSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { build } from 'vite'
import { softwareAt } from '../../main/software.ts'

const root = join(import.meta.dirname, '../..')

/** A program of the tests in one file, which starts several times faster than from its sources. Gives its path. */
export async function bundledProgram(source: string, name: string): Promise<string> {
  const outDir = join(root, 'out', 'programs', `${name}-${process.pid}`)
  sweep()
  await build({
    configFile: false, root, logLevel: 'error', define: { DIPLEDGER_BUILT_FROM: JSON.stringify(softwareAt(root)) },
    ssr: { noExternal: true, external: ['pg', 'pdfmake'] },
    build: { ssr: source, outDir, emptyOutDir: true, minify: false, target: 'node24', rollupOptions: { output: { entryFileNames: `${name}.mjs` } } },
  })
  return join(outDir, `${name}.mjs`)
}

/** A worker of the tests is ended without a word, so what earlier runs left is taken away by later ones. */
function sweep(): void {
  const programs = join(root, 'out', 'programs')
  const hourAgo = Date.now() - 3_600_000
  for (const name of existsSync(programs) ? readdirSync(programs) : []) {
    const found = statSync(join(programs, name), { throwIfNoEntry: false })
    if (found !== undefined && found.mtimeMs < hourAgo) rmSync(join(programs, name), { recursive: true, force: true })
  }
}
