import { execFileSync } from 'node:child_process'
import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { root, run } from './run.ts'

/**
 * Speed of the volume correction, beside the same equations in C, and of the ledger, beside bare SQLite. Not part of
 * `npm test`: it takes minutes and the machine. The first time it makes ledgers of up to a million entries in out/bench.
 */
const folder = join(root, 'out', 'bench')
mkdirSync(folder, { recursive: true })
const compiled = compileKernel(join(folder, 'kernel'))
const parts = [
  await run('node', ['--expose-gc', join('tests', 'bench', 'bench.ts'), folder, ...(compiled === undefined ? [] : [compiled.binary, compiled.compiler])]),
  await run('node', [join('tests', 'bench', 'ledger-bench.ts'), folder]),
]
process.exitCode = parts.find((code) => code !== 0) ?? 0

/** Compiles the kernel in C with the first compiler that is here; undefined when there is none. */
function compileKernel(binary: string): { readonly binary: string; readonly compiler: string } | undefined {
  for (const compiler of ['cc', 'gcc']) {
    const version = versionOf(compiler)
    if (version === undefined) continue
    execFileSync(compiler, ['-O2', '-o', binary, join(root, 'tests', 'bench', 'kernel.c'), '-lm'], { stdio: 'inherit' })
    return { binary, compiler: version }
  }
  return undefined
}

function versionOf(compiler: string): string | undefined {
  try {
    return execFileSync(compiler, ['--version'], { encoding: 'utf8' }).split('\n')[0]
  } catch {
    return undefined
  }
}
