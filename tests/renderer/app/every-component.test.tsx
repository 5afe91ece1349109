import { globSync } from 'node:fs'
import { join } from 'node:path'
import { renderToString } from 'react-dom/server'
import type { ReactNode } from 'react'
import { describe, expect, it } from 'vitest'
import { staticQuantity } from '../../../core/quantity/index.ts'
import { App, Surroundings } from '../../../renderer/app/App.tsx'
import { StorageAlarms } from '../../../renderer/app/StorageAlarms.tsx'
import { Frame } from '../../../renderer/app/Frame.tsx'
import { KeyList } from '../../../renderer/app/KeyList.tsx'
import { LedgerReach, UnsavedFirst } from '../../../renderer/app/LedgerReach.tsx'
import { KeysProvider } from '../../../renderer/app/keys.tsx'
import { TankAtHandProvider } from '../../../renderer/app/tank-at-hand.tsx'
import { TankGlyph } from '../../../renderer/app/TankGlyph.tsx'
import { TerminalContext, TerminalProvider } from '../../../renderer/app/TerminalContext.tsx'
import { YardStrip } from '../../../renderer/app/YardStrip.tsx'
import { FaultInMain, RefusedByMain, type Bridge } from '../../../renderer/bridge/bridge.ts'
import { BridgeProvider } from '../../../renderer/bridge/BridgeContext.tsx'
import { Cautions } from '../../../renderer/gauge/Cautions.tsx'
import { DiscardButton } from '../../../renderer/gauge/DiscardButton.tsx'
import { GaugeLine } from '../../../renderer/gauge/GaugeLine.tsx'
import { GaugeSheet } from '../../../renderer/gauge/GaugeSheet.tsx'
import { InventoryHead } from '../../../renderer/gauge/InventoryHead.tsx'
import { InventoryJob } from '../../../renderer/gauge/InventoryJob.tsx'
import { InventorySheet } from '../../../renderer/gauge/InventorySheet.tsx'
import { newInventory } from '../../../renderer/gauge/inventory-form.ts'
import { KeptNote } from '../../../renderer/gauge/KeptNote.tsx'
import { Insulation, Roof } from '../../../renderer/gauge/PictureShell.tsx'
import { RoundPicture } from '../../../renderer/gauge/RoundPicture.tsx'
import { SheetChecks } from '../../../renderer/gauge/SheetChecks.tsx'
import { TankPicture } from '../../../renderer/gauge/TankPicture.tsx'
import { VerifyFields } from '../../../renderer/gauge/VerifyFields.tsx'
import { VerifyJob } from '../../../renderer/gauge/VerifyJob.tsx'
import { VerifyLevels } from '../../../renderer/gauge/VerifyLevels.tsx'
import { VerifySheet } from '../../../renderer/gauge/VerifySheet.tsx'
import { newVerification } from '../../../renderer/gauge/verify-form.ts'
import { TemperatureProfile } from '../../../renderer/gauge/TemperatureProfile.tsx'
import { usualUnits } from '../../../renderer/gauge/usual-units.ts'
import { Button } from '../../../renderer/parts/Button.tsx'
import { DenseTable } from '../../../renderer/parts/DenseTable.tsx'
import { EnteredByField } from '../../../renderer/parts/EnteredByField.tsx'
import { LongTextField, PassphraseField, SelectField, TextField } from '../../../renderer/parts/Field.tsx'
import { FilePick } from '../../../renderer/parts/FilePick.tsx'
import { Figure } from '../../../renderer/parts/Figure.tsx'
import { CallFailed, Findings } from '../../../renderer/parts/Findings.tsx'
import { Page } from '../../../renderer/parts/Page.tsx'
import { Panel } from '../../../renderer/parts/Panel.tsx'
import { Prepared, SheetPanel } from '../../../renderer/parts/SheetPanel.tsx'
import { TickField } from '../../../renderer/parts/TickField.tsx'
import { Waiting } from '../../../renderer/parts/Waiting.tsx'
import { LineDetails, WorksheetTable } from '../../../renderer/parts/WorksheetTable.tsx'
import { Booked } from '../../../renderer/transfer/Booked.tsx'
import { computeTransfer } from '../../../renderer/transfer/compute-transfer.ts'
import { HeaderFields } from '../../../renderer/transfer/HeaderFields.tsx'
import { MovedHead } from '../../../renderer/transfer/MovedHead.tsx'
import { OpenDraft } from '../../../renderer/transfer/OpenDraft.tsx'
import { ReplaceTicket } from '../../../renderer/transfer/ReplaceTicket.tsx'
import { SignerFields } from '../../../renderer/transfer/SignerFields.tsx'
import { SignPanel } from '../../../renderer/transfer/SignPanel.tsx'
import { Start } from '../../../renderer/transfer/Start.tsx'
import { TransferJob } from '../../../renderer/transfer/TransferJob.tsx'
import { TransferSheet } from '../../../renderer/transfer/TransferSheet.tsx'
import { must } from '../../support/must.ts'
import { anOpeningGauge } from '../../support/snapshots.ts'
import { aFilledGauge, aFilledTransfer } from '../a-sheet.ts'
import { aTerminalNow, PRODUCTS, TANKS } from '../a-yard.ts'

const nothing = (): void => undefined
const silent: Bridge = { call: () => new Promise(() => undefined) }
const [tank, product] = [TANKS[0]!, PRODUCTS[0]!]
const worksheet = must(staticQuantity(tank, product, anOpeningGauge()))
const lastGauge = { tank: 'T-101', product: 'CRUDE', at: '2026-03-14T06:10:00Z', what: 'inventory', levelMm: '4000', waterMm: '50', temperature: '20.0 degC', quantity: worksheet.quantity }
const now = aTerminalNow({ lastGauges: [lastGauge] })
const computed = computeTransfer(aFilledTransfer(), now)
const field = { id: 'field', label: 'Level', value: '4 m', onChange: nothing, error: 'is too high' }
const route = { job: 'transfer', rest: [], query: {} } as const
const columns = [{ id: 'opening', title: 'Opening', form: aFilledGauge({ spots: [{ level: '2 m', temperature: '20 degC' }] }) }, { id: 'closing', title: 'Closing', form: aFilledGauge({ levelBy: 'ullage', level: '9 m' }) }]

/** Every exported component with data as a terminal could have, and something that must be readable in it. */
const COMPONENTS: Readonly<Record<string, readonly [ReactNode, string]>> = {
  App: [<App bridge={silent} />, 'Opening the ledger'],
  Surroundings: [<Surroundings bridge={silent}>inside</Surroundings>, 'inside'],
  LedgerReach: [<LedgerReach />, 'class="reach"'],
  UnsavedFirst: [<UnsavedFirst>inside</UnsavedFirst>, 'Opening the ledger'],
  Frame: [<Frame route={route}>work</Frame>, 'CPT-000013'],
  StorageAlarms: [<StorageAlarms />, ''],
  KeyList: [<KeyList open={false} onClose={nothing} />, ''],
  KeysProvider: [<KeysProvider>inside</KeysProvider>, 'inside'],
  TankAtHandProvider: [<TankAtHandProvider>inside</TankAtHandProvider>, 'inside'],
  TankGlyph: [<TankGlyph shape="upright-cylinder" roof="external-floating" insulated liquid={0.4} water={0.01} />, '<svg'],
  TerminalProvider: [<TerminalProvider>inside</TerminalProvider>, 'Opening the ledger'],
  YardStrip: [<YardStrip now={now} chosen="T-101" />, '4000 mm'],
  BridgeProvider: [<BridgeProvider bridge={silent}>inside</BridgeProvider>, 'inside'],
  Cautions: [<Cautions />, 'Local codes and licensed practice decide.'],
  DiscardButton: [<DiscardButton onDiscard={nothing} />, 'Discard'],
  GaugeSheet: [<GaugeSheet columns={columns} units={usualUnits(tank, product)} zone="Europe/Lisbon" errors={new Map([['opening.level', 'is too high']])} onEdit={nothing} onAdd={nothing} onDrop={nothing} />, 'is too high'],
  InventoryHead: [<InventoryHead worksheet={worksheet} />, 'In the tank'],
  InventoryJob: [<InventoryJob route={{ job: 'gauge', rest: ['new'], query: { tank: 'T-101' } }} />, 'Inventory gauge'],
  InventorySheet: [<InventorySheet id="a" start={{ ...newInventory('T-101', 'CRUDE'), gauge: aFilledGauge() }} />, 'Record inventory'],
  KeptNote: [<KeptNote kept={{ state: 'saved', at: '2026-07-14T06:10:59.123Z' }} />, '07:10'],
  Insulation: [<svg><Insulation /></svg>, 'path'],
  Roof: [<svg><Roof kind="internal-floating" surface={0.4} /></svg>, 'picture-roof'],
  SheetChecks: [<SheetChecks findings={[{ field: 'opening.level', message: 'Level is too high.', clause: 'HOUSE' }]} missing={['closing.level']} exceptions={[]} nameOf={(id) => id} ready="ready" />, 'Level is too high.'],
  GaugeLine: [<GaugeLine column="opening" form={aFilledGauge()} line="tape.acceptance" units={usualUnits(tank, product)} error={undefined} onEdit={nothing} onDrop={nothing} />, 'API MPMS 3.1A'],
  VerifyFields: [<VerifyFields form={newVerification('T-101')} tanks={TANKS} zone="Europe/Lisbon" errors={new Map()} enteredBy="" onEnteredBy={nothing} act={nothing} />, 'OIML R 85 class 2'],
  VerifyJob: [<VerifyJob route={{ job: 'gauge', rest: ['verify'], query: { tank: 'T-101' } }} />, 'Verify an automatic gauge'],
  VerifySheet: [<VerifySheet id="v-1" start={newVerification('T-101')} />, 'No verdict yet'],
  VerifyLevels: [<VerifyLevels stage="asFound" form={newVerification('T-101')} result={undefined} units={usualUnits(tank, product)} errors={new Map()} act={nothing} />, 'Level 3'],
  TemperatureProfile: [<svg><TemperatureProfile x={0} hollow spots={[{ at: 0.1, label: '18.5 degC', warmth: 0 }, { at: 0.3, label: '20.1 degC', warmth: 1 }]} /></svg>, 'picture-profile'],
  RoundPicture: [<svg><RoundPicture tank={{ ...TANKS[0]!, shape: 'sphere' }} shape="sphere" columns={[]} liquid={0.4} water={0} waterLabel="" /></svg>, 'picture-product'],
  TankPicture: [<TankPicture tank={TANKS[2]} columns={[{ id: 'gauge', form: aFilledGauge({ level: '21 ft 7 1/4 in', waterCut: '3 in' }) }]} />, '21 ft 7 1/4 in'],
  Button: [<Button primary keys="R">New receipt</Button>, 'New receipt'],
  DenseTable: [<DenseTable label="Tanks" rows={TANKS} rowKey={({ code }) => code} empty="none" columns={[{ key: 'code', head: 'Code', cell: ({ code }) => code, sortBy: ({ code }) => code }]} onChoose={nothing} />, 'T-302'],
  TextField: [<TextField {...field} measured />, 'is too high'],
  LongTextField: [<LongTextField {...field} />, 'is too high'],
  PassphraseField: [<PassphraseField {...field} />, 'is too high'],
  SelectField: [<SelectField {...field} choices={[{ value: '4 m', label: 'four metres' }]} placeholder="choose" />, 'four metres'],
  Figure: [<Figure value="-1234.50" unit="m3" decimals={3} signed />, 'figure-loss'],
  Findings: [<Findings findings={[{ path: 'level', message: 'Level is too high.' }]} onJump={nothing} />, 'Level is too high.'],
  CallFailed: [<CallFailed error={new FaultInMain('The disk is full.')} onAgain={nothing} />, 'The disk is full.'],
  'CallFailed, refused': [<CallFailed error={new RefusedByMain([{ code: 'x', path: '', value: '', limit: '', clause: 'HOUSE', message: 'No such ticket.' }])} />, 'No such ticket.'],
  FilePick: [<FilePick id="file" choose="Choose a file" hint="or drop it here" accept=".pdf" onFile={nothing} />, 'Choose a file'],
  SheetPanel: [<SheetPanel title="Party" open={false} onClose={nothing} submit="Enter" onSubmit={nothing} busy={false}>inside</SheetPanel>, ''],
  EnteredByField: [<EnteredByField {...field} />, 'is too high'],
  Prepared: [<Prepared posts={['Ticket CPT-000001 void: wrong tank']} onClose={nothing} />, 'Ticket CPT-000001 void'],
  TickField: [<TickField id="tick" label="Accountant" checked onChange={nothing} />, 'Accountant'],
  Page: [<Page title="Register" about="March" actions="…">inside</Page>, 'Register'],
  Panel: [<Panel title="Keys" open={false} onClose={nothing}>inside</Panel>, ''],
  Waiting: [<Waiting step={{ done: 1, of: 4, what: 'signing' }} onCancel={nothing} />, 'signing: 1 of 4'],
  LineDetails: [<LineDetails line={worksheet.lines.at(-1)!} find={() => undefined} />, 'Before rounding'],
  WorksheetTable: [<WorksheetTable columns={[{ title: 'Gauge', lines: worksheet.lines }]} />, 'Net standard volume'],
  Booked: [<Booked number="CPT-000012" />, 'CPT-000012 is booked'],
  HeaderFields: [<HeaderFields form={aFilledTransfer()} now={now} errors={new Map()} act={nothing} />, 'North Shore Supply'],
  MovedHead: [<MovedHead kind="receipt" transfer={computed.transfer} done={2} />, 'Received'],
  OpenDraft: [<OpenDraft id="a" />, 'Working'],
  ReplaceTicket: [<ReplaceTicket number="CPT-000012" />, 'CPT-000012'],
  SignerFields: [<SignerFields index={0} title="First signature" value={{ identity: '', role: 'terminal', passphrase: '' }} onChange={nothing} errors={new Map()} identities={now.identities} />, 'M. Duarte'],
  SignPanel: [<SignPanel open={false} onClose={nothing} ticket={computed.ticket!} draft="a" onHold={nothing} onBooked={nothing} />, ''],
  Start: [<Start chosen="T-101" openOnlyDraft={false} />, 'Last gauged 2026-03-14 06:10'],
  TransferJob: [<TransferJob route={{ job: 'transfer', rest: ['start'], query: {} }} />, 'New receipt'],
  TransferSheet: [<TransferSheet id="a" start={aFilledTransfer()} />, 'Nothing is missing; ready to sign.'],
}

function rendered(component: ReactNode): string {
  return renderToString(<Surroundings bridge={silent}><TerminalContext value={{ now, again: nothing }}>{component}</TerminalContext></Surroundings>)
}

describe('every component of frame, parts, gauge and transfer', () => {
  it.each(Object.entries(COMPONENTS))('%s renders', (_, [component, words]) => {
    expect(rendered(component).replaceAll('<!-- -->', '')).toContain(words)
  })

  it('stands in this list', async () => {
    const root = join(import.meta.dirname, '../../../renderer')
    const missing: string[] = []
    for (const file of globSync(['app', 'bridge', 'parts', 'gauge', 'transfer'].map((folder) => `${folder}/*.tsx`), { cwd: root })) {
      const module: Record<string, unknown> = await import(join(root, file))
      missing.push(...Object.entries(module).filter(([name, value]) => typeof value === 'function' && /^[A-Z][a-z]/.test(name) && !(name in COMPONENTS)).map(([name]) => `${file}: ${name}`))
    }
    expect(missing).toEqual([])
  })
})
