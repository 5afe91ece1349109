/**
 * Gauge snapshots: what was read at one tank at one moment.
 * In: observations as written. Out: {@link GaugeSnapshot}, parsed values and findings. MPMS-3.1A, MPMS-7, MPMS-9.
 */
export { gaugeSnapshotSchema, type GaugeSnapshot } from './snapshot.ts'
export { parseInstant, type Instant } from './instant.ts'
export { freeWater, type FreeWater } from './free-water.ts'
export { checkLevel, type LevelFound, type ReadLevel } from './innage-ullage.ts'
export { readSnapshot, type ParsedSnapshot } from './read-snapshot.ts'
export { type ReadDensity } from './observed-density.ts'
export { ACCEPTANCE, acceptReadings, type AcceptanceName } from './acceptance.ts'
export { lengthLine, type FoundReading } from './level-reading.ts'
export { SPOT_RULES, spotsNeeded } from './spot-count.ts'
export { averageTemperature } from './average-temperature.ts'
export { densitySchema, SAMPLE_PLACES, type Sample, type SamplePlace, type WrittenDensity } from './sample-list.ts'
export { type HeadDensity } from './hybrid.ts'
export { GAUGE_STATUSES, type Instrument } from './instrument.ts'
export { levelSchema, tapeSchema, type Tape, type WrittenLevel } from './tape.ts'
export { type Spot } from './readings.ts'
export { probeProfile } from './hydrostatic-probe.ts'
export { probeInputSchema, probeProfileSchema, probeReadingSchema, snapshotProbeSchema, type ProbeInput, type ProbeProfile, type WrittenProbe } from './probe.ts'
export { MASS_LIMIT } from './probe-limits.ts'
export { rezeroed, type Rezero } from './probe-zero.ts'
export { fieldsOfProbe, probeEvidence, refuseUnsampled, snapshotOfProbe, type Evidence, type FieldsOfProbe } from './probe-snapshot.ts'
export { gaugeLogSchema, LOG_STATUSES, loggedLineSchema, pickedFromLogSchema, type GaugeLog, type LoggedLine, type PickedFromLog } from './gauge-log.ts'
export { probeAtLine, probeLevel, probeSetupSchema, saidOfPressures, withProbeLevels, type ComputedLevels, type ProbeSetup } from './gauge-log-probe.ts'
export { logEvidence } from './gauge-log-evidence.ts'
export { pickedFrom, pickedGaugesSchema, pickGauges, pickGaugesInputSchema, type PickedGauges } from './gauge-log-pick.ts'
export { judgeSettled, SETTLED, type Settled, type SettledRule, type TimedLevel } from './settled.ts'
export { verifyGauge } from './verify-gauge.ts'
export { VERIFICATION_LIMITS, verificationLimit } from './verification-limits.ts'
export { refuseUnverified, standingOf, verificationInForce } from './gauge-standing.ts'
export {
  gaugeVerificationSchema, standingVerificationSchema, VERIFICATION_RULES, VERIFICATION_USES, verificationResultSchema,
  type GaugeVerification, type StandingVerification, type VerificationResult,
} from './verification.ts'
