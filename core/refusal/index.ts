/**
 * What can be refused, as data, and the wording of it in one place.
 * In: what a check found. Out: findings, outcomes, sentences.
 */
export { accepted, allOf, eachOnce, optional, refused, andThen, type Finding, type Outcome } from './finding.ts'
export { orRefuse, Refused } from './refused.ts'
export { FINDING_CODES, wording, type FindingCode } from './wording.ts'
