import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { DebugLogger } from 'builder-util'
import { getConfig, validateConfiguration } from 'app-builder-lib/out/util/config/config.js'
import { describe, expect, it } from 'vitest'
import { ROOT } from '../../../support/programs.ts'

const config = await getConfig(ROOT, 'electron-builder.yml', {})
const manifest = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8'))

describe('the installers', () => {
  it('are described as electron-builder wants it', async () => {
    await expect(validateConfiguration(config, new DebugLogger(false))).resolves.not.toThrow()
  })

  it('a description with a mistake is found out', async () => {
    await expect(validateConfiguration(Object.assign({ colour: 'red' }, config), new DebugLogger(false))).rejects.toThrow('colour')
  })

  it('hold the Electron that was tested, and start the built program', () => {
    expect(config.electronVersion).toBe(manifest.devDependencies.electron)
    expect(config.extraMetadata).toEqual({ main: manifest.main })
    expect(config.electronFuses).toMatchObject({ runAsNode: false, enableNodeOptionsEnvironmentVariable: false, enableNodeCliInspectArguments: false, onlyLoadAppFromAsar: true })
  })
})
