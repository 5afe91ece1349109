import { arch, cpus, loadavg, platform, release } from 'node:os'
import { kernelAllocation } from './allocation.ts'
import { familyRates } from './families.ts'
import { race } from './kernel-race.ts'
import { numberRates } from './number-kernels.ts'

/** Most of the time of C that the kernel may take. */
const TARGET = 1.5
const [, , folder = '.', binary, compiler = ''] = process.argv

const fixed = (value: number, decimals: number): string => value.toFixed(decimals)
const column = (text: string, width: number): string => text.padStart(width)

console.log(`Machine: ${cpus()[0]?.model ?? 'unknown'}, ${cpus().length} cores, ${platform()} ${release()} ${arch()}; load ${loadavg().map((load) => fixed(load, 1)).join(' ')}`)
console.log(`Node ${process.version}, V8 ${process.versions.v8}. All times are processor time, medians of rounds in turn.\n`)

let missed = false
if (binary === undefined) {
  console.log('No C compiler (cc or gcc) was found: the kernel is NOT compared with C.\n')
} else {
  console.log(`Kernel of API MPMS 11.1-2004: base density, temperature, pressure -> CTL, CPL, CTPL. C: ${compiler}, -O2, tests/bench/kernel.c`)
  console.log(`${'group'.padEnd(10)}${column('C ns', 8)}${column('kernel ns', 11)}${column('million/s', 11)}${column('ratio', 8)}${column('with objects ns', 17)}${column('sums differ by', 16)}`)
  let ours = 0
  let theirs = 0
  for (const group of ['crude', 'refined', 'lube'] as const) {
    const { c, kernel, objects, difference } = await race(group, binary, folder)
    ours += kernel
    theirs += c
    console.log(`${group.padEnd(10)}${column(fixed(c, 1), 8)}${column(fixed(kernel, 1), 11)}${column(fixed(1000 / kernel, 2), 11)}${column(fixed(kernel / c, 2), 8)}${column(fixed(objects, 1), 17)}${column(difference.toExponential(1), 16)}`)
  }
  missed = ours / theirs > TARGET
  console.log(`all together: ratio ${fixed(ours / theirs, 2)}; the target is at most ${TARGET} times the time of C: ${missed ? 'MISSED' : 'met'}\n`)
}

const { points, bytes, collections } = await kernelAllocation()
console.log(`Allocation: ${points} points through the kernel left ${bytes} bytes on the heap (${fixed(bytes / points, 5)} a point); ${collections} collections meanwhile.\n`)

console.log(`${'family'.padEnd(26)}${'what'.padEnd(60)}${column('a second', 14)}`)
for (const { name, what, perSecond } of [...numberRates(), ...familyRates()]) {
  console.log(`${name.padEnd(26)}${what.padEnd(60)}${column(new Intl.NumberFormat('en').format(Math.round(perSecond)), 14)}`)
}
process.exitCode = missed ? 1 : 0
