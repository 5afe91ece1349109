import { accepted, allOf, eachOnce, refused, type Finding, type Outcome } from '../refusal/index.ts'
import { discriminate } from '../rounding/index.ts'
import { Decimal, writtenDigits, type Percent } from '../units/index.ts'
import { inputLine, roundedLine, type WorksheetLine } from '../worksheet/index.ts'
import { parseInstant, type Instant } from './instant.ts'
import { readDensity, type ReadDensity } from './observed-density.ts'
import { sedimentAndWater, type ConditionReader } from './readings.ts'
import type { Sample, SamplePlace } from './sample-list.ts'

/** A sample with its texts read. */
export interface ReadSample { readonly from: SamplePlace; readonly number: string; readonly density: ReadDensity; readonly sedimentAndWater: Percent }

/** Samples with the S&W that they come to. */
export interface ReadSamples {
  readonly samples: readonly ReadSample[]
  readonly sedimentAndWater: Percent
  readonly lines: readonly WorksheetLine[]
  readonly exceptions: readonly Finding[]
}

/** Sets of samples that stand for the whole tank: each third counts alike. @source MPMS-8.1 sampling of tanks */
const WHOLE: readonly (readonly SamplePlace[])[] = [['running'], ['middle'], ['upper', 'lower'], ['upper', 'middle', 'lower']]
const CLAUSE = 'MPMS-8.1 sampling of tanks'

/**
 * Reads the samples of one snapshot and averages their S&W: thirds of the liquid count alike.
 *   SW = Σ SWi / n
 * Refuses `value-not-used` for a second sample of one place or a running one beside others, and what density, S&W and instant
 * refuse; a set that leaves a third out (`samples-incomplete`) and a sample of another day (`sample-of-another-day`) are exceptions.
 * @param list as written
 * @param at instant of the snapshot, as written
 * @param readConditions limits of the liquid's standard
 * @param path of the samples, for the findings
 * @source MPMS-8.1 sampling of tanks
 */
export function readSamples(list: readonly Sample[], at: string, readConditions: ConditionReader, path: string): Outcome<ReadSamples> {
  const findings: Finding[] = [...sameTwice(list, path)]
  const samples: ReadSample[] = []
  for (const [i, sample] of list.entries()) {
    const read = allOf<{ at: Instant; density: ReadDensity; sedimentAndWater: Percent }>({
      at: parseInstant(sample.at, `${path}.${i}.at`),
      density: readDensity(sample.density, `${path}.${i}.density`, readConditions),
      sedimentAndWater: sedimentAndWater(sample.sedimentAndWater, `${path}.${i}.sedimentAndWater`),
    })
    if (read.ok) samples.push({ from: sample.from, number: sample.number, density: read.value.density, sedimentAndWater: read.value.sedimentAndWater })
    else findings.push(...read.findings)
  }
  if (findings.length > 0) return refused(...eachOnce(findings))
  return accepted({ samples, ...averageSedimentAndWater(samples), exceptions: [...incomplete(list, path), ...ofAnotherDay(list, at, path)] })
}

function averageSedimentAndWater(samples: readonly ReadSample[]): Pick<ReadSamples, 'sedimentAndWater' | 'lines'> {
  const inputs = samples.map(({ from, number, sedimentAndWater: share }) => inputLine({
    symbol: `SW.${from}`, name: `Sediment and water, ${from} sample ${number}`, value: writtenDigits(share), unit: '%', clause: CLAUSE,
  }))
  const mean = discriminate('S&W %', samples.reduce((sum, { sedimentAndWater: share }) => sum.plus(share.value), new Decimal(0)).div(samples.length))
  const symbols = inputs.map(({ symbol }) => symbol)
  const line = roundedLine({ symbol: 'SWavg', name: 'Sediment and water, mean of the samples', unit: '%', formula: `(${symbols.join(' + ')}) / ${symbols.length}`, from: symbols, rounded: mean, clause: CLAUSE })
  return { sedimentAndWater: { text: `${mean.text} %`, value: mean.value, unit: '%' }, lines: [...inputs, line] }
}

function sameTwice(list: readonly Sample[], path: string): readonly Finding[] {
  return list.flatMap(({ from, number }, i): Finding[] => {
    const twice = list.findIndex((other) => other.from === from) < i
    if (!twice && !(from === 'running' && list.length > 1)) return []
    return [{ code: 'value-not-used', path: `${path}.${i}`, value: `${from} ${number}`, limit: twice ? 'one sample from each place' : 'a running sample stands alone', clause: CLAUSE }]
  })
}

function incomplete(list: readonly Sample[], path: string): readonly Finding[] {
  const places = list.map(({ from }) => from)
  if (WHOLE.some((set) => set.length === places.length && set.every((place) => places.includes(place)))) return []
  return [{ code: 'samples-incomplete', path, value: places.join(' and '), limit: 'upper, middle and lower; upper and lower; middle; or running', clause: CLAUSE }]
}

function ofAnotherDay(list: readonly Sample[], at: string, path: string): readonly Finding[] {
  return list.flatMap((sample, i): Finding[] => sample.at.slice(0, 10) === at.slice(0, 10) ? [] : [
    { code: 'sample-of-another-day', path: `${path}.${i}.at`, value: `${sample.number}, ${sample.at}`, limit: at, clause: CLAUSE },
  ])
}

/** Whether a value and samples that it would be made from are both there, or neither is. */
export function enteredOrSampled(entered: string | undefined, sampled: boolean, path: string, word: string): readonly Finding[] {
  if (entered !== undefined && sampled) return [{ code: 'value-not-used', path, value: entered, limit: `${word} is made from the samples; leave it out`, clause: CLAUSE }]
  if (entered === undefined && !sampled) return [{ code: 'missing-value', path, value: '', limit: `${word}, or samples that it is made from`, clause: CLAUSE }]
  return []
}
