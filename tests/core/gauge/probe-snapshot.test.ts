import { describe, expect, it } from 'vitest'
import { snapshotOfProbe, type GaugeSnapshot } from '../../../core/gauge/index.ts'
import { staticQuantity } from '../../../core/quantity/index.ts'
import { transferQuantity, type TransferInput } from '../../../core/transfer/index.ts'
import { CYLINDER, probeIn, SIX, type Contents } from '../../support/forward-probe.ts'
import { aProduct } from '../../support/snapshots.ts'
import { aTank } from '../../support/tanks.ts'

const tank = aTank({ capacityTable: CYLINDER, referenceGaugeHeight: '21.000 m' })
const product = aProduct()

function aProbeGauge(contents: Partial<Contents> = {}, parts: Partial<GaugeSnapshot> = {}, probe: Partial<NonNullable<GaugeSnapshot['probe']>> = {}): GaugeSnapshot {
  const { capacityTable, ...reading } = probeIn({ layers: [{ to: 20, rho: 840 }], level: 10, heights: SIX, ...contents })
  const outcome = snapshotOfProbe({ tank: tank.code, product: product.code, at: '2026-03-14T06:10:00Z', by: 'M. Duarte', ambient: '12 degC', sedimentAndWater: '0.20 %', waterCut: '0 mm' }, { ...reading, sample: 'S-0314-1', ...probe }, capacityTable)
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.findings))
  return { ...outcome.value, ...parts }
}

const opening = aProbeGauge()
const closing = aProbeGauge({ level: 15, layers: [{ to: 20, rho: 838 }] }, { at: '2026-03-14T18:40:00Z' })
const receipt: TransferInput = { kind: 'receipt', tank, product, opening, closing }

describe('a snapshot from a probe', () => {
  it('has the probe\'s level, average temperature and density, and keeps the raw readings', () => {
    expect(opening).toMatchObject({ level: { innage: '10000 mm' }, temperatures: { liquid: '20.00 degC' }, density: { value: '840.0 kg/m3', temperature: '20.00 degC', instrument: 'probe' }, probe: { sample: 'S-0314-1' } })
    expect(opening.probe?.modules[0]?.pressure).toBe(probeIn({ layers: [{ to: 20, rho: 840 }], level: 10, heights: SIX }).modules[0]?.pressure)
  })
  it('has the temperatures of the covered modules as spots, top to bottom', () => expect(opening.temperatures.spots?.map(({ level }) => level)).toEqual(['9000 mm', '6000 mm', '3000 mm', '100 mm']))
  it('takes the water cut from the probe where it saw water', () => {
    const { capacityTable, ...reading } = probeIn({ layers: [{ to: 1.26, rho: 1000 }, { to: 20, rho: 800 }], level: 10, heights: SIX }, { waterThreshold: '810 kg/m3', waterDensity: '1000 kg/m3' })
    const outcome = snapshotOfProbe({ tank: 'T', product: 'P', at: '2026-03-14T06:10:00Z', by: 'M. Duarte', sedimentAndWater: '0 %' }, reading, capacityTable)
    expect(outcome).toMatchObject({ ok: true, value: { waterCut: '1260 mm', waterBy: 'probe', density: { value: '800.0 kg/m3' } } })
  })
  it.each([
    ['no water seen and no cut given', undefined, {}, 'missing-value', 'snapshot.waterCut'],
    ['a cut beside the water that the probe saw', '10 mm', { waterThreshold: '810 kg/m3' }, 'value-not-used', 'snapshot.waterCut'],
  ] as const)('refuses %s', (_, waterCut, parts, code, path) => {
    const { capacityTable, ...reading } = probeIn({ layers: [{ to: 3, rho: 1000 }, { to: 20, rho: 800 }], level: 10, heights: SIX }, parts)
    const outcome = snapshotOfProbe({ tank: 'T', product: 'P', at: '2026-03-14T06:10:00Z', by: 'M. Duarte', waterCut }, reading, capacityTable)
    expect(outcome.ok ? [] : outcome.findings).toMatchObject([{ code, path }])
  })
})

describe('the custody worksheet runs as for a hand gauge', () => {
  it('to the same quantity as the same figures by hand', () => {
    const { probe, ...byHand } = opening
    const [a, b] = [staticQuantity(tank, product, opening), staticQuantity(tank, product, { ...byHand, density: { value: '840.0 kg/m3', temperature: '20.00 degC', instrument: 'density-meter' } })]
    expect(a.ok && b.ok).toBe(true)
    if (a.ok && b.ok) expect(a.value.quantity).toEqual(b.value.quantity)
  })
  it('with the probe\'s lines before its own, each symbol once', () => {
    const outcome = staticQuantity(tank, product, opening)
    const symbols = outcome.ok ? outcome.value.lines.map(({ symbol }) => symbol) : []
    expect(symbols.indexOf('Lprobe')).toBeGreaterThan(0)
    expect(symbols.indexOf('Lprobe')).toBeLessThan(symbols.indexOf('TOV'))
    expect(new Set(symbols).size).toBe(symbols.length)
  })
  it('prints a zero beyond its limit on the ticket', () => {
    const outcome = transferQuantity({ ...receipt, opening: aProbeGauge({ error: (i) => (i === 4 ? 100 : 0) }) })
    expect(outcome.ok ? outcome.value.exceptions.map(({ code, path }) => [code, path]) : []).toEqual([['probe-zero-outside-limit', 'opening.probe.zeroLimit']])
  })
  it.each<readonly [string, Partial<GaugeSnapshot>, string, string]>([
    ['a level that is not the probe\'s', { level: { innage: '10.002 m' } }, 'probe-figures-differ', 'snapshot.level.innage'],
    ['an ullage beside a probe', { level: { ullage: '11000 mm' } }, 'probe-figures-differ', 'snapshot.level'],
    ['another temperature', { temperatures: { liquid: '21.00 degC', ambient: '12 degC' } }, 'probe-figures-differ', 'snapshot.temperatures.liquid'],
    ['another density', { density: { value: '841.0 kg/m3', temperature: '20.00 degC', instrument: 'probe' } }, 'probe-figures-differ', 'snapshot.density.value'],
    ['a density by the probe without a probe', { probe: undefined }, 'missing-value', 'snapshot.probe'],
    ['a raw pressure changed afterwards', { probe: { ...opening.probe!, modules: opening.probe!.modules.map((one, i) => (i === 0 ? { ...one, pressure: '84.0 kPa' } : one)) } }, 'probe-figures-differ', 'snapshot.density.value'],
    ['a raw pressure that cannot be read', { probe: { ...opening.probe!, gravity: '9.8' } }, 'unreadable-value', 'snapshot.probe.gravity'],
  ])('refuses %s', (_, parts, code, path) => {
    const outcome = staticQuantity(tank, product, { ...opening, ...parts })
    expect(outcome.ok ? [] : outcome.findings.map((finding) => [finding.code, finding.path])).toContainEqual([code, path])
  })
  it('the same level in other words is the probe\'s', () => expect(staticQuantity(tank, product, { ...opening, level: { innage: '10.000 m' } }).ok).toBe(true))
})

describe('a ticket from a probe needs S&W from a sample', () => {
  it('and is refused without one, at both gauges at once', () => {
    const unsampled = (gauge: GaugeSnapshot): GaugeSnapshot => ({ ...gauge, probe: { ...gauge.probe!, sample: ' ' } })
    const outcome = transferQuantity({ ...receipt, opening: unsampled(opening), closing: unsampled(closing) })
    expect(outcome.ok ? [] : outcome.findings.map(({ code, path }) => [code, path])).toEqual([['sample-missing', 'opening.probe.sample'], ['sample-missing', 'closing.probe.sample']])
  })
  it('with one it is moved: 5 m × 500 m² at 20 °C', () => {
    const outcome = transferQuantity(receipt)
    expect(outcome.ok && Number(outcome.value.moved.gsv.value)).toBeGreaterThan(2480)
  })
  it('an inventory needs none: nothing is handed over', () => expect(staticQuantity(tank, product, aProbeGauge({}, {}, { sample: undefined })).ok).toBe(true))
})
