import { valueOf, type GaugeField, type GaugeForm, type ListName } from './gauge-form.ts'

/** The parts of a sheet that unfold; the first part is always there. */
export const SECTIONS = ['readings', 'spots', 'samples', 'instrument', 'pressures', 'roof'] as const
export type SectionName = (typeof SECTIONS)[number]

/** A part of the sheet: its lines in order, and the list that it grows by. */
export interface SheetSection { readonly name: 'gauge' | SectionName; readonly lines: readonly GaugeField[]; readonly grows: ListName | null }

const GROWS: { readonly [S in SectionName]: ListName | null } = { readings: 'readings', spots: 'spots', samples: 'samples', instrument: null, pressures: null, roof: null }

/** Lines of one part that a sheet has, given what was chosen on it. */
function linesIn(section: 'gauge' | SectionName, form: GaugeForm): readonly GaugeField[] {
  switch (section) {
    case 'gauge': return gaugeLines(form)
    case 'readings': return readingLines(form)
    case 'spots': return ['average', ...form.spots.flatMap((_, i): GaugeField[] => [`spots.${i}.level`, `spots.${i}.temperature`])]
    case 'samples': return form.samples.flatMap(({ instrument }, i): GaugeField[] => [
      `samples.${i}.from`, `samples.${i}.number`, `samples.${i}.at`, `samples.${i}.instrument`, `samples.${i}.density`,
      ...(instrument === 'base' ? [] : [`samples.${i}.densityTemperature` as const]), `samples.${i}.sedimentAndWater`,
    ])
    case 'instrument': return ['readBy', ...(form.readBy === 'automatic' ? ['gaugeId', 'gaugeStatus'] as const : [])]
    case 'pressures': return [
      'hybrid.bottomHeight', 'hybrid.bottomPressure', 'hybrid.middleHeight', 'hybrid.middlePressure', 'hybrid.topHeight', 'hybrid.topPressure',
      'hybrid.gravity', 'hybrid.vapourDensity', 'hybrid.airDensity', 'hybrid.limit',
    ]
    case 'roof': return ['waterBy', 'roofLoad', 'criticalZoneReason']
  }
}

function gaugeLines(form: GaugeForm): readonly GaugeField[] {
  return [
    'at', 'by', 'levelBy', ...(form.readings.length > 0 ? [] : ['level' as const]), ...(form.levelBy === 'ullage' ? ['referenceHeight' as const] : []),
    ...(form.waterBy === 'volume' ? ['waterVolume', 'waterOrigin'] as const : ['waterCut' as const]),
    ...(form.average === 'entered' ? ['liquid' as const] : []), 'ambient', ...densityLines(form), 'pressure', 'remarks',
  ]
}

/** Density and S&W, where no samples say them. */
function densityLines({ samples, instrument, probe }: GaugeForm): readonly GaugeField[] {
  if (samples.length > 0) return []
  return [
    'instrument', 'density', ...(instrument === 'base' ? [] : ['densityTemperature' as const]),
    ...(instrument === 'density-meter' || instrument === 'probe' ? ['densityPressure' as const] : []), 'sedimentAndWater', ...(probe === null ? [] : ['probe.sample' as const]),
  ]
}

function readingLines({ readings, tape, levelBy }: GaugeForm): readonly GaugeField[] {
  const withBob = levelBy === 'ullage' && tape.bob !== 'none'
  return [
    ...readings.flatMap((_, i): GaugeField[] => [`readings.${i}.read`, ...(withBob ? [`readings.${i}.bob` as const] : [])]),
    ...(readings.length > 0 ? ['tape.acceptance' as const] : []), ...(readings.length > 0 && levelBy === 'ullage' ? ['tape.bob' as const] : []),
    'tape.temperature', 'tape.standardAt', 'tape.correction', 'tape.certificate',
  ]
}

/** Every line that a sheet has, folded away or not. */
export function linesOf(form: GaugeForm): readonly GaugeField[] {
  return (['gauge', ...SECTIONS] as const).flatMap((section) => linesIn(section, form))
}

/** The parts of a sheet of several gauges, each with the lines that one of them has, in the sheet's order. */
export function sheetSections(forms: readonly GaugeForm[]): readonly SheetSection[] {
  return (['gauge', ...SECTIONS] as const).map((name) => {
    const has = forms.map((form) => linesIn(name, form))
    const longest = has.toSorted((a, b) => b.length - a.length)[0] ?? []
    const others = has.flat().filter((line) => !longest.includes(line))
    return { name, lines: inOrder([...new Set([...longest, ...others])], has), grows: name === 'gauge' ? null : GROWS[name] }
  })
}

/** Lines of several sheets in an order that fits each of them. */
function inOrder(lines: readonly GaugeField[], each: readonly (readonly GaugeField[])[]): readonly GaugeField[] {
  const before = (a: GaugeField, b: GaugeField): boolean => each.some((one) => one.includes(a) && one.includes(b) && one.indexOf(a) < one.indexOf(b))
  const placed: GaugeField[] = []
  let left = [...lines]
  while (left.length > 0) {
    const next = left.find((line) => left.every((other) => other === line || !before(other, line))) ?? left[0]
    if (next === undefined) break
    placed.push(next)
    left = left.filter((line) => line !== next)
  }
  return placed
}

/** Whether something was written or chosen in a part, so that it may not be folded away unseen. */
export function isUsed(section: SectionName, form: GaugeForm, empty: GaugeForm): boolean {
  const list = GROWS[section]
  return (list !== null && form[list].length > 0) || linesIn(section, form).some((line) => valueOf(form, line) !== valueOf(empty, line))
}
