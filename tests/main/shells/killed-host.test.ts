import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createInterface } from 'node:readline'
import { expect, it } from 'vitest'
import type { Progress } from '../../../main/operations/contracts/index.ts'
import { loopbackBridge } from '../../../renderer/bridge/loopback.ts'
import { ROOT } from '../../support/programs.ts'

it('a host that is killed in the middle of a call leaves a fault with the caller, not silence', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'dipledger-killed-'))
  const child = spawn(process.execPath, [join(ROOT, 'tests/support/hanging-host.ts'), folder], { cwd: ROOT })
  try {
    const [line] = await once(createInterface({ input: child.stdout }), 'line')
    const { origin, token } = JSON.parse(String(line))
    const steps: Progress[] = []
    const bridge = loopbackBridge(token, (path, init) => fetch(`${origin}${String(path)}`, init))
    const asked = bridge.call('verify-ledger', {}, { progress: (step) => { steps.push(step) } })
    const settled = expect(asked).rejects.toMatchObject({ name: 'FaultInMain' })
    await expect.poll(() => steps.length).toBe(1)
    child.kill('SIGKILL')
    await settled
  } finally {
    child.kill('SIGKILL')
    rmSync(folder, { recursive: true, force: true })
  }
})
