import { describe, expect, it } from 'vitest'
import { readTerminalFolder } from '../../../main/exchange/terminal-folder.ts'
import { sampleFiles, sampleFilesWith } from '../../support/sample-folder.ts'

type Files = Readonly<Record<string, string>>
const findings = (files: Files): readonly string[] => { const outcome = readTerminalFolder(files); return outcome.ok ? [] : outcome.findings.map((finding) => `${finding.path}: ${finding.code}`) }

describe('the folder of a terminal', () => {
  it('reads the samples', async () => {
    const outcome = readTerminalFolder(await sampleFiles())
    expect(outcome).toMatchObject({ ok: true, value: { terminal: { code: 'CPT', gaugeHour: '06:00' }, effectiveFrom: '2026-08-15T07:00:00Z' } })
  })

  const TANKS = 'terminal/tanks.csv'
  it.each<readonly [string, string, string, string, readonly string[]]>([
    ['a tank of a product that is not there', TANKS, 'Crude tank 101,CRUDE', 'Crude tank 101,TAR', ['terminal/tanks.csv line 2, product: unknown-product']],
    ['a shell of a material without coefficients', TANKS, 'mild-carbon-steel,no,external-floating,352000', 'brass,no,external-floating,352000', ['terminal/tanks.csv line 2, shell_material: malformed-input']],
    ['a roof without its critical zone', TANKS, '352000 lb,no,,,5 ft 6 in,7 ft 0 in', '352000 lb,no,,,,', ['terminal/tanks.csv line 2, critical_from: malformed-input']],
    ['a roof that weighs in barrels', TANKS, '352000 lb', '352000 bbl', ['terminal/tanks.csv line 2, roof_mass: unit-not-accepted']],
    ['a table that deducts a roof of unknown density', TANKS, '61500 lb,yes,60.0 °API', '61500 lb,yes,', ['terminal/tanks.csv line 4, roof_reference_density: missing-value']],
    ['the table of another tank', TANKS, 'capacity-tables/TK-101.csv', 'capacity-tables/TK-102.csv', ['terminal/tanks.csv line 2, capacity_table: malformed-input']],
    ['a table that is not there', TANKS, 'capacity-tables/TK-101.csv', 'TK-101.csv', ['terminal/tanks.csv line 2, capacity_table: missing-value']],
    ['a party that stands twice', 'terminal/parties.csv', 'SHB,', 'WXF,', ['terminal/parties.csv line 6, code: already-on-record', 'terminal/people.csv line 7, party: unknown-party']],
    ['a table whose volumes fall', 'terminal/capacity-tables/TK-301.csv', '100,', '100,9', ['terminal/capacity-tables/TK-301.csv line 19: capacity-table-not-increasing']],
    ['a limit of more than everything', 'terminal/limits.csv', '0.12 %', '112 %', ['terminal/limits.csv line 4, percent: out-of-range']],
    ['a limit of a product that is not there', 'terminal/limits.csv', 'DIESEL', 'TAR', ['terminal/limits.csv line 4, product: unknown-product']],
    ['a person of nobody', 'terminal/people.csv', 'Nell Varga,SHB', 'Nell Varga,NOBODY', ['terminal/people.csv line 7, party: unknown-party']],
    ['a code in small letters', 'terminal/parties.csv', 'WXF,', 'wxf,', ['terminal/parties.csv line 5, code: malformed-input', 'terminal/people.csv line 5, party: unknown-party']],
    ['a product of no commodity group', 'terminal/products.csv', 'Diesel 10 ppm,refined', 'Diesel 10 ppm,marmalade', ['terminal/products.csv line 4, commodity: malformed-input', 'terminal/limits.csv line 4, product: unknown-product', 'terminal/tanks.csv line 7, product: unknown-product', 'terminal/tanks.csv line 8, product: unknown-product']],
    ['a product by an edition that its commodity does not have', 'terminal/products.csv', 'FUEL380,Fuel oil 380,refined,,MPMS-11.1-2004', 'FUEL380,Fuel oil 380,refined,,ASTM-D1555', ['terminal/products.csv line 5, edition: out-of-range', 'terminal/limits.csv line 5, product: unknown-product', 'terminal/tanks.csv line 9, product: unknown-product']],
    ['a zone that is none', 'terminal/terminal.json', 'Europe/Lisbon', 'Europe/Atlantis', ['terminal/terminal.json, terminal.zone: out-of-range']],
    ['a gauge hour of 25', 'terminal/terminal.json', '06:00', '25:00', ['terminal/terminal.json, gaugeHour: malformed-input']],
    ['a terminal that is no JSON', 'terminal/terminal.json', '{', '', ['terminal/terminal.json, : malformed-input']],
  ])('refuses %s at its cell', async (_, file, was, is, expected) => {
    expect(findings(await sampleFilesWith(file, [was, is]))).toEqual(expected)
  })

  describe('a tank with columns that the samples do without', () => {
    const NAMES = ['shape', 'roof_legs_low', 'roof_legs_high', 'roof_legs_position', 'usual_water_cut'] as const
    type More = Partial<Record<(typeof NAMES)[number], string>>
    /** The tanks of the samples with these cells at the end of the lines of the tanks named. */
    const withCells = async (more: Readonly<Record<string, More>>): Promise<Files> => {
      const files = await sampleFiles()
      const [heading = '', ...lines] = (files[TANKS] ?? '').trim().split('\n')
      const cells = (line: string): readonly string[] => NAMES.map((name) => more[line.split(',')[0] ?? '']?.[name] ?? '')
      return { ...files, [TANKS]: [[heading, ...NAMES].join(','), ...lines.map((line) => [line, ...cells(line)].join(','))].join('\n') }
    }

    it('is read with its shape, the legs of its roof and its usual water cut; an empty cell leaves the tank as it was', async () => {
      const before = readTerminalFolder(await sampleFiles())
      const after = readTerminalFolder(await withCells({
        'TK-101': { roof_legs_low: '5 ft 0 in', roof_legs_high: '6 ft 6 in', roof_legs_position: 'high', usual_water_cut: '3 in' }, 'TK-302': { shape: 'horizontal-cylinder' },
      }))
      if (!before.ok || !after.ok) throw new Error(JSON.stringify([before, after]))
      const tank = (code: string) => after.value.tanks.find((one) => one.code === code)
      expect(tank('TK-101')).toMatchObject({ usualWaterCut: '3 in', roof: { legs: { low: '5 ft 0 in', high: '6 ft 6 in', position: 'high' } } })
      expect(tank('TK-302')?.shape).toBe('horizontal-cylinder')
      const others = (tanks: typeof before.value.tanks) => tanks.filter(({ code }) => code !== 'TK-101' && code !== 'TK-302')
      expect(others(after.value.tanks)).toEqual(others(before.value.tanks))
    })

    it.each<readonly [string, string, More, readonly string[]]>([
      ['a shape that is none', 'TK-302', { shape: 'egg' }, ['terminal/tanks.csv line 8, shape: malformed-input']],
      ['a sphere with a floating roof', 'TK-101', { shape: 'sphere' }, ['terminal/tanks.csv line 2, roof: value-not-used']],
      ['legs without their position', 'TK-101', { roof_legs_low: '5 ft 0 in', roof_legs_high: '6 ft 6 in' }, ['terminal/tanks.csv line 2, roof_legs_position: malformed-input']],
      ['legs of which the high position is the lower', 'TK-101', { roof_legs_low: '6 ft 6 in', roof_legs_high: '5 ft 0 in', roof_legs_position: 'low' }, ['terminal/tanks.csv line 2, roof_legs_high: out-of-range']],
      ['a usual water cut without its unit', 'TK-101', { usual_water_cut: '75' }, ['terminal/tanks.csv line 2, usual_water_cut: unreadable-value']],
    ])('refuses %s at its cell', async (_, tank, cells, expected) => {
      expect(findings(await withCells({ [tank]: cells }))).toEqual(expected)
    })
  })

  describe('a product by its own curve', () => {
    const CURVE = { certificate: 'LC-2026-0031', laboratory: 'Invented Laboratory', date: '2026-02-03', points: [{ temperature: '10 degC', density: '1025.5 kg/m3' }, { temperature: '30 degC', density: '1011.4 kg/m3' }] }
    const withCurve = async (more: Files): Promise<Files> => {
      const files = await sampleFiles()
      const [heading = '', ...lines] = (files['terminal/products.csv'] ?? '').trim().split('\n')
      const products = [`${heading},curve`, ...lines.map((line) => `${line},`), 'GLYCOL,Glycol mixture,curve,,LAB-CERTIFICATE,15 °C,m3,t,kg/m3,curves/GLYCOL.json']
      return { ...files, 'terminal/products.csv': products.join('\n'), ...more }
    }

    it('is read from the JSON that the sheet names', async () => {
      const outcome = readTerminalFolder(await withCurve({ 'terminal/curves/GLYCOL.json': JSON.stringify(CURVE) }))
      expect(outcome.ok && outcome.value.products.at(-1)).toMatchObject({ code: 'GLYCOL', commodity: 'curve', curve: CURVE })
    })

    it('is refused at its cell where the file is not there, is no curve, or does not rise', async () => {
      expect(findings(await withCurve({}))).toEqual(['terminal/products.csv line 6, curve: missing-value'])
      expect(findings(await withCurve({ 'terminal/curves/GLYCOL.json': '{}' }))).toEqual(expect.arrayContaining([expect.stringMatching(/^terminal\/products\.csv line 6, curve.*: malformed-input$/)]))
      expect(findings(await withCurve({ 'terminal/curves/GLYCOL.json': JSON.stringify({ ...CURVE, points: [...CURVE.points].reverse() }) }))).toEqual(expect.arrayContaining([expect.stringMatching(/^terminal\/products\.csv line 6, curve.*: curve-not-in-order$/)]))
    })
  })
})
