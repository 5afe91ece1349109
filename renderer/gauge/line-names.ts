import { words } from '../words/en.ts'
import type { GaugeField, GaugeForm } from './gauge-form.ts'

const IN_LIST = /^(spots|readings|samples)\.(\d+)\.(.+)$/

/** The name of a line for people, within its column: `liquid temperature`, `spot 2 level`. */
export function lineName(line: GaugeField): string {
  const inList = IN_LIST.exec(line)
  if (!inList) return words.gauge.lines[line as keyof typeof words.gauge.lines]
  const [number, part] = [Number(inList[2]) + 1, inList[3] ?? '']
  switch (inList[1]) {
    case 'spots': return words.gauge.spot(number, part === 'level')
    case 'readings': return words.gauge.reading(number, part === 'bob')
    default: return words.gauge.sample(number, words.gauge.sampleParts[part as keyof typeof words.gauge.sampleParts])
  }
}

/** The name of a line for people: `Opening: liquid temperature`. */
export function nameOfLine(column: string, line: GaugeField): string {
  return `${titleOfColumn(column)}: ${lineName(line)}`
}

/** `opening` → `Opening`; where several tanks stand on a sheet, `T-101.opening` → `T-101 opening`. */
function titleOfColumn(column: string): string {
  const titles: Readonly<Record<string, string>> = words.gauge.columns
  const several = /^(.+)\.(opening|closing|gauge)$/.exec(column)
  return several ? `${several[1] ?? ''} ${(titles[several[2] ?? ''] ?? '').toLowerCase()}` : (titles[column] ?? column)
}

/** The head of a line, as the sheet writes it at the left. */
export function headOf(line: GaugeField, forms: readonly GaugeForm[]): string {
  const { heads } = words.gauge
  const inList = IN_LIST.exec(line)
  if (inList) {
    const [number, part] = [Number(inList[2]) + 1, inList[3] ?? '']
    if (inList[1] === 'spots') return part === 'level' ? words.gauge.spotHead(number) : '…'
    if (inList[1] === 'readings') return part === 'read' ? words.gauge.readingHead(number) : words.gauge.bobHead
    return part === 'from' ? words.gauge.sampleHead(number) : `… ${words.gauge.sampleHeads[part as keyof typeof words.gauge.sampleHeads]}`
  }
  if (line === 'level') {
    const by = new Set(forms.map((form) => form.levelBy))
    return by.size > 1 ? heads.either : by.has('ullage') ? heads.ullage : heads.innage
  }
  return heads[line as Exclude<keyof typeof heads, 'clock'>] ?? line
}
