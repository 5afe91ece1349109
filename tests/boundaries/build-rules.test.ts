import { execFile } from 'node:child_process'
import { promisify } from 'node:util'
import { describe, expect, it } from 'vitest'
import { DEPENDENCY_RULES } from './build-tools.ts'
import { ROOT } from './sources-tree.ts'

const run = promisify(execFile)

/** Runs a checking tool; its whole output is the failure message. */
async function outputOf(tool: string, ...parameters: string[]): Promise<string> {
  try {
    const { stdout, stderr } = await run(process.execPath, [tool, ...parameters], { cwd: ROOT, maxBuffer: 20_000_000 })
    return `exit 0\n${stdout}${stderr}`
  } catch (error) {
    const { stdout = '', stderr = '' } = error as { stdout?: string; stderr?: string }
    return `refused\n${stdout}${stderr}`
  }
}

const TSC = 'node_modules/typescript/bin/tsc'

describe('the rules that stop the build', () => {
  it.each(['core', 'main', 'renderer', 'tests'])('%s compiles with its own permissions', async (folder) => {
    expect(await outputOf(TSC, '-p', folder)).toMatch(/^exit 0/)
  }, 180_000)

  it('lint: rounding in core/rounding only, no clock or chance in core, files that a head can hold', async () => {
    expect(await outputOf('node_modules/eslint/bin/eslint.js', '.')).toMatch(/^exit 0/)
  }, 180_000)

  it('dependencies point one way and folders meet at their index', async () => {
    expect(await outputOf(...DEPENDENCY_RULES)).toMatch(/^exit 0/)
  }, 180_000)
})
