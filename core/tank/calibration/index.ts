/**
 * Calibration: a capacity table computed from what was measured at a tank.
 * In: {@link TankSurvey}. Out: a table, and the lines that say how it was made. MPMS-2.2A, ISO-7507-1, MPMS-2.2E, API-2552.
 */
export { bottomVolume, type BottomPoint } from './bottom-volume.ts'
export { computeCapacityTable } from './compute-table.ts'
export { endDepth, endVolume, type End } from './end-volume.ts'
export { lyingCylinderVolume, segmentArea, sphereVolume, type LyingCylinder } from './round-volumes.ts'
export { tankSurveySchema, type LyingSurvey, type SphereSurvey, type TankSurvey, type UprightSurvey } from './survey.ts'
export { hoopStrain, uprightVolume, type Course, type UprightCylinder, type UprightVolume } from './upright-volume.ts'
