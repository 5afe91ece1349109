import type { Citation } from '../sources.ts'

/**
 * Limit on the error of a mass that a tank's system shows. From memory: the text of OIML R 125 was not read, its classes and
 * clauses are to be confirmed before anybody relies on it.
 * @source OIML-R125
 */
export const MASS_LIMIT = { percent: 0.5, clause: 'OIML-R125 maximum permissible error', note: 'OIML R 125 from memory, its clause was not read' } as const satisfies { percent: number; clause: Citation; note: string }

/** Densities of a stratum outside these are no liquid of this trade but a module that reads wrong [kg/m³]. Ours, no source. */
export const STRATUM_DENSITY = { from: 300, to: 2000 } as const

/**
 * A module more than this many zero limits over the vapour is covered, whatever the ones below it say: such an offset would
 * be a broken module. common practice, no source.
 */
export const GROSS_OFFSET = 10

/** A module is above a level that is found from below when it is so by more than this many uncertainties. common practice, no source. */
export const LEVEL_MARGIN = 6

/** Coverage factor of every expanded uncertainty here. @source GUM 6.2.1 */
export const COVERAGE = 2
