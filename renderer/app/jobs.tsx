import type { ComponentType } from 'react'
import { InventoryJob } from '../gauge/InventoryJob.tsx'
import { TransferJob } from '../transfer/TransferJob.tsx'
import type { Route } from './route.ts'

/** A job's page: it is told where the window is. */
export type JobPage = ComponentType<{ readonly route: Route }>

/** Which page does which job. */
export const PAGES: Readonly<Partial<Record<Route['job'], JobPage>>> = {
  transfer: TransferJob,
  gauge: InventoryJob,
}
