import type { ComponentType } from 'react'
import type { Route } from './route.ts'

/** A job's page: it is told where the window is. */
export type JobPage = ComponentType<{ readonly route: Route }>

/** Which page does which job. */
export const PAGES: Readonly<Partial<Record<Route['job'], JobPage>>> = {
}
