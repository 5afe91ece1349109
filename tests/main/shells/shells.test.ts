import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { LoopbackHost } from '../../../main/shells/loopback/server.ts'
import { aHost, lawful, send } from '../../support/loopback.ts'
import { commandLine } from '../../support/programs.ts'
import { aClosingGauge, anOpeningGauge, aProduct } from '../../support/snapshots.ts'
import { aTank } from '../../support/tanks.ts'
import { aWorld, type World } from '../../support/world.ts'

let world: World
let host: LoopbackHost
beforeAll(async () => {
  world = await aWorld({ withLedger: false })
  host = await aHost(world.context)
})
afterAll(async () => {
  await host.close()
  await world.close()
})

/** What a shell said, in one form: a result, or the findings. */
interface Said { readonly result?: unknown; readonly findings?: unknown }

async function throughCommandLine(name: string, input: unknown): Promise<Said> {
  const { code, out, error } = await commandLine([name, '-'], JSON.stringify(input))
  if (code === 0) return { result: JSON.parse(out) }
  return { findings: JSON.parse(error).error.findings }
}

async function throughLoopback(name: string, input: unknown): Promise<Said> {
  const { body } = await send(host, { method: 'POST', path: `/op/${name}`, headers: lawful(host), body: JSON.stringify(input) })
  const last = JSON.parse(body.trimEnd().split('\n').at(-1) ?? '')
  return 'refused' in last ? { findings: last.refused.findings } : { result: last.result }
}

async function inProcess(name: string, input: unknown): Promise<Said> {
  const answer = await world.call(name, input)
  if ('fault' in answer) throw new Error(answer.fault.message)
  return 'refused' in answer ? { findings: answer.refused.findings } : { result: JSON.parse(JSON.stringify(answer.result)) }
}

const SHELLS = [
  ['the command line', throughCommandLine],
  ['the loopback host', throughLoopback],
] as const

const gauges = { tank: aTank(), product: aProduct() }
const CALLS: readonly (readonly [name: string, what: string, input: unknown])[] = [
  ['volume-correction', 'crude at 88.3 °F', { commodity: 'crude', density: { value: '31.4 degAPI' }, baseTemperature: '60 degF', temperature: '88.3 degF', pressure: '0 psi' }],
  ['volume-correction', 'a density outside the group', { commodity: 'crude', density: { value: '200 kg/m3' }, baseTemperature: '15 degC', temperature: '20 degC' }],
  ['static-quantity', 'an opening gauge', { ...gauges, snapshot: anOpeningGauge() }],
  ['static-quantity', 'two readings that cannot be read', { ...gauges, snapshot: anOpeningGauge({ waterCut: '50', sedimentAndWater: 'some' }) }],
  ['transfer-quantity', 'a receipt', { kind: 'receipt', ...gauges, opening: anOpeningGauge(), closing: aClosingGauge() }],
  ['loss-gain', 'a month', { unit: 'm3', opening: '1000.000 m3', receipts: ['500.000 m3'], deliveries: ['300.000 m3'], adjustments: [], closing: '1199.000 m3', limit: { percent: '0.25 %', fixed: '0 m3', base: 'deliveries', source: 'agreement' } }],
  ['read-capacity-table', 'no table at all', { file: Buffer.from('nothing').toString('base64') }],
  ['verify-document', 'no document at all', { file: Buffer.from('nothing').toString('base64') }],
  ['probe-profile', 'an input of another form', { modules: [] }],
  ['about', 'nothing asked', {}],
  ['brew-coffee', 'no such operation', {}],
]

describe.each(SHELLS)('through %s', (_shell, through) => {
  it.each(CALLS)('%s answers as in process: %s', async (name, _what, input) => {
    expect(await through(name, input)).toEqual(await inProcess(name, input))
  })
})

describe('a file given by its path', () => {
  it('answers as its bytes do', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'dipledger-shells-'))
    try {
      const path = join(folder, 'table.csv')
      writeFileSync(path, 'no table')
      const { error } = await commandLine(['read-capacity-table', path])
      expect({ findings: JSON.parse(error).error.findings }).toEqual(await inProcess('read-capacity-table', { name: 'table.csv', file: Buffer.from('no table').toString('base64') }))
    } finally {
      rmSync(folder, { recursive: true, force: true })
    }
  })
})
