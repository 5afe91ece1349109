import { execFileSync } from 'node:child_process'
import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { root, runAll } from './run.ts'

/** Speed of the volume correction, beside the same equations in C. Not part of `npm test`: it takes a minute and the machine. */
const folder = join(root, 'out', 'bench')
mkdirSync(folder, { recursive: true })
const compiled = compileKernel(join(folder, 'kernel'))
await runAll([['node', '--expose-gc', join('tests', 'bench', 'bench.ts'), folder, ...(compiled === undefined ? [] : [compiled.binary, compiled.compiler])]])

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
