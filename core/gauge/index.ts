/**
 * Gauge snapshots: what was read at one tank at one moment.
 * In: observations as written. Out: {@link GaugeSnapshot}, parsed values and findings. MPMS-3.1A, MPMS-7, MPMS-9.
 */
export { gaugeSnapshotSchema, type GaugeSnapshot } from './snapshot.ts'
export { probeInputSchema, probeProfileSchema, type ProbeInput, type ProbeProfile } from './probe.ts'
