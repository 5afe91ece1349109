import { globSync } from 'node:fs'
import { join } from 'node:path'
import type { ReactNode } from 'react'
import { renderToString } from 'react-dom/server'
import { describe, expect, it } from 'vitest'
import { trendChart } from '../../../core/chart/index.ts'
import { tankForm } from '../../../renderer/tanks/tank-form.ts'
import { Surroundings } from '../../../renderer/app/App.tsx'
import type { Route } from '../../../renderer/app/route.ts'
import { TerminalContext } from '../../../renderer/app/TerminalContext.tsx'
import type { Bridge } from '../../../renderer/bridge/bridge.ts'
import { Chart } from '../../../renderer/charts/Chart.tsx'
import { usualUnits } from '../../../renderer/gauge/usual-units.ts'
import { AdjustmentPanel } from '../../../renderer/reconcile/AdjustmentPanel.tsx'
import { MonthPage } from '../../../renderer/reconcile/MonthPage.tsx'
import { MonthReport, NotReconciled, ReportOnScreen } from '../../../renderer/reconcile/MonthReport.tsx'
import { MonthTable } from '../../../renderer/reconcile/MonthTable.tsx'
import { PeriodPicker } from '../../../renderer/reconcile/PeriodPicker.tsx'
import { ProductDetails, TankDetails } from '../../../renderer/reconcile/RowDetails.tsx'
import { RefusedByMain } from '../../../renderer/bridge/bridge.ts'
import { SaveReport } from '../../../renderer/reconcile/SaveReport.tsx'
import { StepsTable } from '../../../renderer/reconcile/StepsTable.tsx'
import { RegisterFilters } from '../../../renderer/register/RegisterFilters.tsx'
import { NO_FILTER } from '../../../renderer/register/register-filter.ts'
import { RegisterPage } from '../../../renderer/register/RegisterPage.tsx'
import { RegisterTable, TicketLink } from '../../../renderer/register/RegisterTable.tsx'
import { TicketDetail } from '../../../renderer/register/TicketDetail.tsx'
import { ExceptionList, Facts, MovedFigures, PlaceInLedger, Readings, SignerList } from '../../../renderer/register/TicketParts.tsx'
import { VoidPanel } from '../../../renderer/register/VoidPanel.tsx'
import { EffectiveFields } from '../../../renderer/tanks/EffectiveFields.tsx'
import { FactList } from '../../../renderer/tanks/FactList.tsx'
import { InstrumentList } from '../../../renderer/tanks/InstrumentList.tsx'
import { InstrumentPanel } from '../../../renderer/tanks/InstrumentPanel.tsx'
import { LimitPanel } from '../../../renderer/tanks/LimitPanel.tsx'
import { OneOf } from '../../../renderer/tanks/OneOf.tsx'
import { ProductDetail } from '../../../renderer/tanks/ProductDetail.tsx'
import { ProductPanel } from '../../../renderer/tanks/ProductPanel.tsx'
import { RoofFields } from '../../../renderer/tanks/RoofFields.tsx'
import { DeadwoodRows } from '../../../renderer/tanks/DeadwoodRows.tsx'
import { Noticed } from '../../../renderer/tanks/Noticed.tsx'
import { EMPTY_DEADWOOD, surveyForm } from '../../../renderer/tanks/survey-form.ts'
import { SurveyPanel } from '../../../renderer/tanks/SurveyPanel.tsx'
import { SurveyText, type SurveyPart } from '../../../renderer/tanks/SurveyText.tsx'
import { SurveyUpright } from '../../../renderer/tanks/SurveyUpright.tsx'
import { SurveyVessel } from '../../../renderer/tanks/SurveyVessel.tsx'
import { TableFile } from '../../../renderer/tanks/TableFile.tsx'
import { TankDetail } from '../../../renderer/tanks/TankDetail.tsx'
import { TankVersions } from '../../../renderer/tanks/TankVersions.tsx'
import { TankPanel } from '../../../renderer/tanks/TankPanel.tsx'
import { TerminalPanel } from '../../../renderer/tanks/TerminalPanel.tsx'
import { YardPage } from '../../../renderer/tanks/YardPage.tsx'
import { CheckPage, CheckResult } from '../../../renderer/verify/CheckPage.tsx'
import { aReport } from '../../core/chart/a-report.ts'
import { aTicket } from '../../support/ticket.ts'
import { aTerminalNow, PRODUCTS, TANKS } from '../a-yard.ts'
import { aLine } from '../register/a-line.ts'

const nothing = (): void => undefined
const silent: Bridge = { call: () => new Promise(() => undefined) }
const limit = { product: 'DIESEL', percent: '0.12 %', fixed: '2 m3', base: 'deliveries', source: 'Storage agreement' } as const
const now = aTerminalNow({ limits: [limit] })
const day = { zone: 'Europe/Lisbon', gaugeHour: '06:00' }
const report = aReport()
const unmeasured = new RefusedByMain([{ code: 'inventory-missing', path: 'to', value: 'T-101', limit: '', clause: '', message: 'to: no measured inventory of T-101; one measured within 12 h of 2026-11-01T06:00:00Z' }])
const at = (job: Route['job'], ...rest: readonly string[]): Route => ({ job, rest, query: {} })
const signer = (identity: string, name: string, role: 'terminal' | 'counterparty') => ({ identity, name, party: 'CPT', role, certificate: 'ab'.repeat(32) })
const ticket = aTicket([signer('m-duarte', 'M. Duarte', 'terminal'), signer('j-vance', 'J. Vance', 'counterparty')])
const voided = aLine({ voided: { seq: 40, at: '2026-03-15T08:00:00Z', reason: 'tape misread' }, replacedBy: 'CPT-000008' })
const checked = { valid: false, number: 'CPT-000001', signatures: [{ name: 'M. Duarte', party: 'CPT', certificate: 'ab'.repeat(32), signedAt: '2026-03-14T19:05:00Z', valid: false }], checks: [{ check: 'Every number comes out again', holds: false, detail: 'NSV differs' }], ledgerPosition: 'unknown' }
const effective = { typed: '', type: nothing, read: { ok: false, why: 'unreadable' }, error: 'Write year, month, day', by: '', setBy: nothing, ready: undefined } as const
const panel = { open: false, onClose: nothing, onEntered: nothing } as const

const survey: SurveyPart = {
  form: { ...surveyForm('horizontal-cylinder', 'mild-carbon-steel'), deadwood: [EMPTY_DEADWOOD], ends: [{ kind: 'torispherical', depth: '', crown: '3 m', knuckle: '0.18 m' }, { kind: 'flat', depth: '', crown: '', knuckle: '' }] },
  set: nothing, errors: new Map([['survey-diameter', 'Inside diameter is out of range.']]),
}

/** Every exported component with data as a terminal could have, and something that must be readable in it. */
const COMPONENTS: Readonly<Record<string, readonly [ReactNode, string]>> = {
  Chart: [<Chart option={trendChart(report, { tank: 'T-101', product: 'CRUDE' })} label="Trend of T-101" height={200} />, 'Trend of T-101'],
  RegisterPage: [<RegisterPage route={at('register', 'CPT-000007')} />, 'Closed from'],
  RegisterFilters: [<RegisterFilters filter={{ ...NO_FILTER, fromDay: '2026-02-30' }} wrong={['fromDay']} onChange={nothing} />, 'write the day as 2026-03-14'],
  RegisterTable: [<RegisterTable lines={[aLine(), voided]} selected="" narrow={false} onChoose={nothing} />, 'void: tape misread'],
  TicketLink: [<TicketLink number="CPT-000008" />, '#/register/CPT-000008'],
  TicketDetail: [<TicketDetail number="CPT-000007" onClose={nothing} onVoided={nothing} />, 'CPT-000007'],
  MovedFigures: [<MovedFigures ticket={ticket} />, 'Received: Net standard volume'],
  Facts: [<Facts ticket={{ ...ticket, replaces: 'CPT-000003' }} zone={day.zone} />, 'CPT-000003'],
  ExceptionList: [<ExceptionList ticket={ticket} />, 'Printed on the ticket'],
  Readings: [<Readings ticket={ticket} zone={day.zone} />, '9.500 m'],
  SignerList: [<SignerList ticket={ticket} />, 'J. Vance'],
  PlaceInLedger: [<PlaceInLedger ticket={ticket} line={aLine()} late={null} corrections={[]} hash={'cd'.repeat(32)} documentHash={'ef'.repeat(32)} />, 'T-101 as set by entry 2'],
  VoidPanel: [<VoidPanel number="CPT-000007" bookedAt={undefined} open={false} onClose={nothing} onVoided={nothing} />, ''],
  MonthPage: [<MonthPage route={at('month')} />, 'No tank has been gauged yet'],
  MonthReport: [<MonthReport period={{ from: report.from, to: report.to }} zone={day.zone} />, 'Working'],
  NotReconciled: [<NotReconciled error={unmeasured} zone={day.zone} onAgain={() => undefined} />, 'No measured inventory of T-101; one measured within 12 h of 2026-11-01 06:00'],
  ReportOnScreen: [<ReportOnScreen report={report} zone={day.zone} />, 'T-101 lost what T-102 gained'],
  'ReportOnScreen, nothing reconciled': [<ReportOnScreen report={{ ...report, tanks: [], products: [], oppositePairs: [] }} zone={day.zone} />, 'Nothing could be reconciled'],
  MonthTable: [<MonthTable report={report} zone={day.zone} />, 'loss outside limit'],
  PeriodPicker: [<PeriodPicker typed={{ from: '2026-03-01 06:00', to: '2026-04-01 06:00' }} day={day} onChoose={nothing} />, 'March 2026'],
  TankDetails: [<TankDetails report={report} tank={report.tanks[0]!} zone={day.zone} />, 'storage contract, clause 9'],
  ProductDetails: [<ProductDetails report={report} product="CRUDE" name="Crude oil" result={report.products[0]!.result} />, 'cumulative unbooked change of Crude oil'],
  SaveReport: [<SaveReport period={{ from: report.from, to: report.to }} />, 'Save PDF'],
  StepsTable: [<StepsTable tank={report.tanks[0]!} name="T-101" zone={day.zone} />, 'opening of CPT-000003'],
  AdjustmentPanel: [<AdjustmentPanel open={false} onClose={nothing} onPosted={nothing} />, ''],
  YardPage: [<YardPage route={at('yard', 'tank', 'T-201')} />, '52 ft 4 1/2 in'],
  'YardPage, nothing of that name': [<YardPage route={at('yard', 'tank', 'T-999')} />, 'There is nothing called T-999'],
  TankDetail: [<TankDetail tank={TANKS[1]!} />, '48500 kg'],
  ProductDetail: [<ProductDetail product={PRODUCTS[2]!} />, '0.12 % of deliveries, plus 2 m³'],
  FactList: [<FactList facts={[['Shell', 'mild carbon steel']]} />, 'mild carbon steel'],
  TankPanel: [<TankPanel tank={undefined} {...panel} />, ''],
  ProductPanel: [<ProductPanel product={undefined} {...panel} />, ''],
  InstrumentList: [<InstrumentList />, 'New instrument'],
  InstrumentPanel: [<InstrumentPanel instrument={undefined} open={false} onClose={nothing} onEntered={nothing} />, ''],
  LimitPanel: [<LimitPanel product={PRODUCTS[0]!} limit={limit} {...panel} />, ''],
  TerminalPanel: [<TerminalPanel {...panel} />, ''],
  EffectiveFields: [<EffectiveFields effective={effective} ids={{ from: 'from', by: 'by' }} errors={new Map()} />, 'Write year, month, day'],
  OneOf: [<OneOf id="unit" label="Booked in" value="m3" of={['m3', 'bbl']} say={(one) => one} onChange={nothing} />, 'bbl'],
  RoofFields: [<RoofFields form={tankForm(TANKS[1])} units={usualUnits(TANKS[1], PRODUCTS[0])} onChange={nothing} errors={new Map([['tank-mass', 'Roof mass cannot be read.']])} />, 'Roof mass cannot be read.'],
  TableFile: [<TableFile table={TANKS[0]!.capacityTable} inForce={undefined} shape="upright-cylinder" shellMaterial="mild-carbon-steel" onTable={nothing} error={undefined} />, 'Certificate CAL-2024-0117, 121 rows'],
  SurveyPanel: [<SurveyPanel shape="sphere" shellMaterial="mild-carbon-steel" open={false} onClose={nothing} onTable={nothing} />, ''],
  SurveyText: [<SurveyText part={survey} field="diameter" path="diameter" label="Inside diameter" />, 'is out of range'],
  SurveyUpright: [<SurveyUpright part={survey} />, 'Add a course'],
  SurveyVessel: [<SurveyVessel part={survey} />, 'Crown radius, End 1'],
  DeadwoodRows: [<DeadwoodRows part={survey} />, 'Take out deadwood 1'],
  Noticed: [<Noticed table={{ ...TANKS[0]!.capacityTable, noticed: [{ code: 'capacity-table-jump', path: 'file line 9', value: '', limit: '', clause: 'HOUSE', message: 'file line 9 stands out.' }] }} />, 'file line 9 stands out.'],
  TankVersions: [<TankVersions tank="T-101" />, 'Reading the ledger'],
  CheckPage: [<CheckPage route={at('check')} />, 'Choose PDF'],
  CheckResult: [<CheckResult checked={checked} />, 'CPT-000001 does not hold'],
}

function rendered(component: ReactNode): string {
  return renderToString(<Surroundings bridge={silent}><TerminalContext value={{ now, again: nothing }}>{component}</TerminalContext></Surroundings>)
}

describe('every component of register, month, yard, check and charts', () => {
  it.each(Object.entries(COMPONENTS))('%s renders', (_, [component, words]) => {
    expect(rendered(component).replaceAll('<!-- -->', '')).toContain(words)
  })

  it('stands in this list', async () => {
    const root = join(import.meta.dirname, '../../../renderer')
    const missing: string[] = []
    for (const file of globSync(['register', 'reconcile', 'tanks', 'verify', 'charts'].map((folder) => `${folder}/*.tsx`), { cwd: root })) {
      const module: Record<string, unknown> = await import(join(root, file))
      missing.push(...Object.entries(module).filter(([name, value]) => typeof value === 'function' && /^[A-Z][a-z]/.test(name) && !(name in COMPONENTS)).map(([name]) => `${file}: ${name}`))
    }
    expect(missing).toEqual([])
  })
})
