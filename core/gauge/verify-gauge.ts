import { accepted, allOf, optional, refused, andThen, type Finding, type Outcome } from '../refusal/index.ts'
import { discriminate, type Rounded } from '../rounding/index.ts'
import type { Tank } from '../tank/index.ts'
import { lengthFromMillimetres, millimetres, parseLength, type Decimal, type Length } from '../units/index.ts'
import { exceptionFrom, inputLine, roundedLine, type WorksheetLine } from '../worksheet/index.ts'
import type { TapeUnit } from './acceptance.ts'
import { checkLevel, type LevelFound } from './innage-ullage.ts'
import { parseInstant, type Instant } from './instant.ts'
import { notNegative } from './level-reading.ts'
import { verificationLimit } from './verification-limits.ts'
import type { GaugeVerification, VerificationResult, VerificationStage } from './verification.ts'

type Comparisons = GaugeVerification['asFound']
interface Read { readonly automatic: Length; readonly hand: LevelFound }

const STAGES = { asFound: { symbol: 'F', name: 'as found' }, asLeft: { symbol: 'L', name: 'as left' } } as const
const LEVELS = 3
const CLAUSE = 'MPMS-3.1B field verification'

/**
 * Holds an automatic level gauge against hand gauges: at each level the difference automatic − hand against the limit of its
 * rule and use; verified when every difference as left is within it, as found where the gauge was not set.
 *   d = A − H;  |d| ≤ limit
 * Refuses `tank-differs`, `missing-value` for fewer than three levels at a first verification, `out-of-range`, and what
 * instants, levels and repeated readings refuse. A gauge found or left out of limits (`gauge-out-of-limits`), levels that do not
 * reach each third of the tank (`verification-levels-close`) and what the hand gauges except are exceptions.
 * @param verification texts as written
 * @param tank whose gauge it is
 * @param path of the verification, for the findings
 * @source MPMS-3.1B field verification
 */
export function verifyGauge(verification: GaugeVerification, tank: Tank, path = 'verification'): Outcome<VerificationResult> {
  const read = allOf<{ tank: null; at: Instant; nextDue: null; levels: null; reference: Length; asFound: readonly Read[]; asLeft: readonly Read[] | undefined }>({
    tank: verification.tank === tank.code ? accepted(null) : refused({ code: 'tank-differs', path: `${path}.tank`, value: verification.tank, limit: tank.code, clause: CLAUSE }),
    at: parseInstant(verification.at, `${path}.at`),
    nextDue: later(verification, path),
    levels: enoughLevels(verification, path),
    reference: parseLength(tank.referenceGaugeHeight, 'tank.referenceGaugeHeight'),
    asFound: readComparisons(verification.asFound, tank, `${path}.asFound`),
    asLeft: verification.asLeft === undefined ? accepted(undefined) : readComparisons(verification.asLeft, tank, `${path}.asLeft`),
  })
  return andThen(read, ({ asFound, asLeft, reference }) => accepted(judge(verification, asFound, asLeft, millimetres(reference), path)))
}

function later({ at, nextDue }: GaugeVerification, path: string): Outcome<null> {
  const [now, due] = [parseInstant(at, `${path}.at`), optional(nextDue, (text) => parseInstant(text, `${path}.nextDue`))]
  if (!due.ok) return due
  if (!now.ok || due.value === undefined || due.value.order > now.value.order) return accepted(null)
  return refused({ code: 'out-of-range', path: `${path}.nextDue`, value: due.value.text, limit: `later than the verification, ${at}`, clause: CLAUSE })
}

function enoughLevels({ occasion, asFound, asLeft }: GaugeVerification, path: string): Outcome<null> {
  if (occasion === 'subsequent') return accepted(null)
  const short = ([['asFound', asFound], ['asLeft', asLeft]] as const).flatMap(([stage, points]): Finding[] => points === undefined || points.length >= LEVELS ? [] : [
    { code: 'missing-value', path: `${path}.${stage}`, value: `${points.length} levels`, limit: 'a first verification is at three levels, one in each third of the tank', clause: CLAUSE },
  ])
  return short.length > 0 ? refused(...short) : accepted(null)
}

function readComparisons(points: Comparisons, tank: Tank, path: string): Outcome<readonly Read[]> {
  const findings: Finding[] = []
  const read: Read[] = []
  for (const [i, { automatic, hand, tape }] of points.entries()) {
    const place = `${path}.${i}`
    const both = allOf<{ automatic: Length; hand: LevelFound }>({
      automatic: andThen(notNegative(automatic, `${place}.automatic`), (length) => withinTank(length, tank, `${place}.automatic`)),
      hand: atHand(checkLevel({ level: hand, tape }, tank, place), place),
    })
    if (both.ok) read.push(both.value)
    else findings.push(...both.findings)
  }
  return findings.length > 0 ? refused(...findings) : accepted(read)
}

/** The level of a hand gauge stands at `hand`, not at `level` as in a snapshot. */
function atHand(found: Outcome<LevelFound>, place: string): Outcome<LevelFound> {
  const moved = (finding: Finding): Finding => ({ ...finding, path: finding.path.replace(`${place}.level`, `${place}.hand`) })
  return found.ok ? accepted({ ...found.value, exceptions: found.value.exceptions.map(moved) }) : refused(...found.findings.map(moved))
}

function withinTank(length: Length, tank: Tank, path: string): Outcome<Length> {
  const height = parseLength(tank.referenceGaugeHeight, 'tank.referenceGaugeHeight')
  if (!height.ok || millimetres(length).lte(millimetres(height.value))) return accepted(length)
  return refused({ code: 'out-of-range', path, value: length.text, limit: `at most the reference gauge height, ${height.value.text}`, clause: 'MPMS-3.1A reference gauge height' })
}

function judge(verification: GaugeVerification, asFound: readonly Read[], asLeft: readonly Read[] | undefined, heightMm: Decimal, path: string): VerificationResult {
  const found = compare(verification, asFound, 'asFound', path)
  const left = asLeft === undefined ? null : compare(verification, asLeft, 'asLeft', path)
  const close = verification.occasion === 'initial' ? [asFound, ...(asLeft === undefined ? [] : [asLeft])].flatMap((points, i) => thirds(points, heightMm, `${path}.${i === 0 ? 'asFound' : 'asLeft'}`)) : []
  return {
    verdict: (left ?? found).stage.within ? 'within' : 'outside', asFound: found.stage, asLeft: left?.stage ?? null,
    lines: [...found.lines, ...(left?.lines ?? [])],
    exceptions: [...[...asFound, ...(asLeft ?? [])].flatMap(({ hand }) => hand.exceptions), ...found.exceptions, ...(left?.exceptions ?? []), ...close].map(exceptionFrom),
  }
}

interface Compared { readonly stage: VerificationStage; readonly lines: WorksheetLine[]; readonly exceptions: Finding[] }

function compare(verification: GaugeVerification, points: readonly Read[], name: keyof typeof STAGES, path: string): Compared {
  const compared: Compared & { stage: { points: VerificationStage['points']; within: boolean } } = { stage: { points: [], within: true }, lines: [], exceptions: [] }
  points.forEach(({ automatic, hand }, i) => {
    const unit: TapeUnit = ['in', 'ft', 'ft-in'].includes(automatic.unit) ? 'in' : 'mm'
    const [shown, byHand] = [millimetres(automatic), hand.levelMm].map((mm) => lengthFromMillimetres(mm, unit).value)
    if (shown === undefined || byHand === undefined) throw new Error('two lengths are two values')
    const difference = shown.minus(byHand)
    const { limit, clause } = verificationLimit(verification, byHand, unit)
    const within = difference.abs().lte(limit)
    const symbol = `${STAGES[name].symbol}${i + 1}`
    const words = { unit, clause } as const
    const printed = (value: Decimal): Rounded => discriminate(`gauge comparison ${unit}`, value)
    const quantity = (value: Decimal): { value: string; unit: string } => ({ value: printed(value).value.toFixed(), unit })
    compared.lines.push(
      inputLine({ ...words, symbol: `A${symbol}`, name: `Automatic gauge, ${STAGES[name].name}, level ${i + 1}`, value: printed(shown).value.toFixed(), notes: [`read ${automatic.text}`] }),
      roundedLine({ ...words, symbol: `H${symbol}`, name: `Hand gauge, ${STAGES[name].name}, level ${i + 1}`, rounded: printed(byHand), formula: handFormula(hand), from: [], clause: 'MPMS-3.1A innage and ullage', notes: hand.reading.found.lines.map((line) => `${line.symbol} = ${line.value} ${line.unit}`.trim()) }),
      roundedLine({ ...words, symbol: `d${symbol}`, name: `Automatic less hand, ${STAGES[name].name}, level ${i + 1}`, rounded: printed(difference), formula: `A${symbol} − H${symbol}`, from: [`A${symbol}`, `H${symbol}`], notes: [`limit ${printed(limit).value.toFixed()} ${unit}, ${within ? 'within' : 'outside'}`] }),
    )
    compared.stage.points.push({ automatic: quantity(shown), hand: quantity(byHand), difference: quantity(difference), limit: quantity(limit), within })
    if (!within) {
      compared.stage.within = false
      compared.exceptions.push({ code: 'gauge-out-of-limits', path: `${path}.${name}.${i}`, value: `${printed(difference).value.toFixed()} ${unit} ${STAGES[name].name}`, limit: `${printed(limit).value.toFixed()} ${unit}`, clause })
    }
  })
  return compared
}

function handFormula({ reading }: LevelFound): string {
  return reading.by === 'innage' ? reading.found.symbol : `RGH − ${reading.found.symbol}`
}

/** Levels of a first verification that leave a third of the tank out. */
function thirds(points: readonly Read[], heightMm: Decimal, path: string): readonly Finding[] {
  const reached = new Set(points.map(({ hand }) => Math.min(2, hand.levelMm.times(3).div(heightMm).floor().toNumber())))
  if (reached.size === 3) return []
  return [{ code: 'verification-levels-close', path, value: points.map(({ hand }) => `${hand.levelMm.toFixed()} mm`).join(', '), limit: `one in each third of ${heightMm.toFixed()} mm`, clause: CLAUSE }]
}
