/**
 * Rounding: the increments and the tie rule of every quantity, in one table, and the only place that rounds.
 * In: unrounded values. Out: rounded text with its rule. MPMS-12.1.1 Table 1, MPMS-11.1-2004 11.1.5.4.
 */
export { DISCRIMINATION, type Discriminated, type RoundingRule } from './discrimination.ts'
export { discriminate, display, type Rounded } from './round.ts'
export { LARGEST_REMAINDER, shareOut, type Share } from './share-out.ts'
