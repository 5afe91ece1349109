import type { ComponentType } from 'react'
import { DensityPage } from '../density/DensityPage.tsx'
import { InventoryJob } from '../gauge/InventoryJob.tsx'
import { TransferJob } from '../transfer/TransferJob.tsx'
import { LedgerPage } from '../ledger/LedgerPage.tsx'
import { PeoplePage } from '../people/PeoplePage.tsx'
import { MonthPage } from '../reconcile/MonthPage.tsx'
import { RegisterPage } from '../register/RegisterPage.tsx'
import { StoragePage } from '../storage/StoragePage.tsx'
import { StockJob } from '../stock/StockJob.tsx'
import { YardPage } from '../tanks/YardPage.tsx'
import { CheckPage } from '../verify/CheckPage.tsx'
import type { Route } from './route.ts'

/** A job's page: it is told where the window is. */
export type JobPage = ComponentType<{ readonly route: Route }>

/** Which page does which job. */
export const PAGES: Readonly<Partial<Record<Route['job'], JobPage>>> = {
  transfer: TransferJob,
  gauge: InventoryJob,
  register: RegisterPage,
  month: MonthPage,
  yard: YardPage,
  people: PeoplePage,
  check: CheckPage,
  ledger: LedgerPage,
  density: DensityPage,
  stock: StockJob,
  storage: StoragePage,
}
