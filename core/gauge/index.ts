/**
 * Gauge snapshots: what was read at one tank at one moment.
 * In: observations as written. Out: {@link GaugeSnapshot}, parsed values and findings. MPMS-3.1A, MPMS-7, MPMS-9.
 */
export { gaugeSnapshotSchema, type GaugeSnapshot } from './snapshot.ts'
export { parseInstant, type Instant } from './instant.ts'
export { checkLevel, type LevelFound, type ReadLevel } from './innage-ullage.ts'
export { readSnapshot, type ParsedSnapshot, type ReadDensity } from './read-snapshot.ts'
export { type Spot } from './readings.ts'
export { probeProfile } from './hydrostatic-probe.ts'
export { probeInputSchema, probeProfileSchema, type ProbeInput, type ProbeProfile } from './probe.ts'
