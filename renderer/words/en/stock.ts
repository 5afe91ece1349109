import type { StockMovementKind } from '../../../core/transfer/index.ts'
import { INSTRUMENT_WORDS, STOCK_MOVEMENT_WORDS } from '../../../main/operations/contracts/index.ts'

const roles = (kind: StockMovementKind, at: number, of: number): string => {
  switch (kind) {
    case 'tank-to-tank': return at === 0 ? 'Tank that gives' : 'Tank that takes'
    case 'blend': return at === of - 1 ? 'Tank of the blend' : `Component ${at + 1}`
    case 'regrade': return 'Tank under its old name'
    default: return 'Tank'
  }
}

export const stock = {
  title: 'Stock', movements: 'Movements', owners: 'Owners', toOwners: 'Owners', toMovements: 'Movements', draftsTitle: 'Unfinished movements',
  kinds: STOCK_MOVEMENT_WORDS,
  says: {
    'tank-to-tank': 'each tank by its own gauges; what was lost on the way shows', blend: 'several tanks into one, under another name', regrade: 'another name for what lies in a tank',
    'water-draw-off': 'free water drained from a tank', 'line-fill': 'what stands in a line, before and after',
  },
  begin: 'Enter a movement', newTitle: (kind: string, tanks: string): string => (tanks === '' ? kind : `${kind} ${tanks}`),
  waiting: (count: number): string => (count === 1 ? '1 movement waits for approval' : `${count} movements wait for approval`),
  waits: 'This movement waits for approval as it was prepared. Whoever prepared it can withdraw it; then it can be opened here again.', toWaiting: 'To what waits',
  none: 'Nothing has been moved inside the terminal yet.', noDrafts: 'Nothing is unfinished.', more: 'Older movements',
  columns: { seq: 'Entry', at: 'Complete at', kind: 'Kind', what: 'What was booked', difference: 'Difference', reason: 'Reason', by: 'Entered by', late: 'Concerns' },
  tankRole: roles, kind: 'Kind', choose: 'choose …', addTank: 'Add a component', dropTank: 'Take off', addLine: 'Add what stands in the line', dropLine: 'Leave the line out',
  product: (code: string): string => `holds ${code}`,
  sheetLabel: 'Gauges', worksheetLabel: 'What it books', pictureLabel: 'Tanks', post: 'Post movement', allThere: 'Nothing is missing; ready to post.', allThereToPrepare: 'Nothing is missing; ready to prepare.', undo: 'Undo', redo: 'Redo',
  lineTitle: 'Line', lineBy: { net: 'stated at base conditions', observed: 'as observed' }, lineBefore: 'Before', lineAfter: 'After',
  fields: {
    toProduct: 'New product', toDensity: 'Base density then', netOil: 'Net oil that went with the water', reason: 'Reason', reference: 'Reference', enteredBy: 'Entered by',
    'line.code': 'Line', 'line.product': 'Product in the line', 'line.by': 'Contents',
    'line.opening.at': 'Line before: time', 'line.closing.at': 'Line after: time', 'line.opening.net': 'Line before: net standard volume', 'line.closing.net': 'Line after: net standard volume',
    'line.opening.volume': 'Line before: volume', 'line.closing.volume': 'Line after: volume', 'line.opening.temperature': 'Line before: temperature', 'line.closing.temperature': 'Line after: temperature',
    'line.opening.density': 'Line before: base density', 'line.closing.density': 'Line after: base density', 'line.opening.sedimentAndWater': 'Line before: S&W', 'line.closing.sedimentAndWater': 'Line after: S&W',
  },
  lineHeads: { at: 'Time', net: 'Net standard volume', volume: 'Volume, observed', temperature: 'Temperature', density: 'Base density', sedimentAndWater: 'S&W' },
  head: { 'tank-to-tank': 'Received, net standard volume', blend: 'Blended, net standard volume', regrade: 'Under its new name, net standard volume', 'water-draw-off': 'Free water drawn', 'line-fill': 'Change of the line, net standard volume' },
  notWhileWrong: 'There is no figure as long as something is to be mended, below.', notYet: 'Choose the tanks and fill in their gauges.', notYetLine: 'Say what stood in the line before and after.', difference: 'Difference', inMass: 'in mass', booked: 'books', unbookedFigure: 'left unbooked',
  explained: {
    none: 'What left came in, to the last digit.', lost: (figure: string): string => `${figure} left and did not come in. It is booked as it was gauged; nothing makes up for it.`,
    gained: (figure: string): string => `${figure} more came in than left. It is booked as it was gauged; nothing makes up for it.`,
    blend: 'Volumes of unlike liquids do not add up exactly: read the mass for what was lost.',
    regrade: 'Each name at its own base conditions and by its own standard. The tank is in service for the new product from this instant on.',
    drawn: (figure: string): string => `The oil in the tank changed by ${figure} more than is booked; that stays to be seen as unbooked.`, drawnAll: 'The oil in the tank changed by what is booked.',
    line: 'Booked on the account of the line.',
  },
  worksheetOf: (tank: string): string => `${tank}: gauges`, movementLines: 'Movement', columnsOfTank: { opening: 'Opening', closing: 'Closing' }, theGauge: 'Gauge',
  posted: (seq: number): string => `The movement stands as entry ${seq}.`, detail: (kind: string, seq: number): string => `${kind}, entry ${seq}`, back: 'Back to the list', exceptions: 'Printed with it', hash: 'Hash', entered: 'Entered', complete: 'Complete at', lateOf: (period: string, at: string): string => `concerns ${period}, counts at ${at}`, concerns: 'concerns', countsAt: (at: string): string => `, counts at ${at}`,
  void: 'Void …', voided: (reason: string): string => `void: ${reason}`, voidedAt: (at: string): string => `Void since ${at}, `, entry: (seq: number): string => `entry ${seq}`,
  standsIn: 'It stands in the closed period', takenBack: (at: string): string => ` and is taken back in an open one, counting at ${at}.`,
  tankStands: (tank: string, product: string, from: string): string => `${tank} is still in service for ${product}. Where it was not renamed, enter the tank anew with its old product from ${from} on:`, toYard: 'Yard',
  voiding: {
    title: (seq: number): string => `Void the movement of entry ${seq}`,
    says: 'The movement stays as it is and is struck through. All that it booked, and what was shared out of it, leaves the book with a new entry that gives your reason. This cannot be undone; a right movement is entered anew.',
    regrade: (tank: string, product: string): string => `${tank} keeps its version with ${product}: most regrades are entered again with another gauge. Where the tank was not renamed at all, enter it anew in the yard.`,
    reason: 'Reason', by: 'Voided by', submit: 'Void the movement',
  },
  shares: 'Whose it is', shareOut: 'Share out …',
  own: {
    title: 'Owners', asOf: 'As of', now: 'now', table: 'Whose product stands where', columns: { place: 'Tank or line', product: 'Product', party: 'Owner', nsv: 'Net standard volume', book: 'booked in all' },
    notShared: 'not shared out', none: 'Nothing is booked yet.', belowZero: 'less than nothing', openTitle: 'Not shared out yet', openNone: 'Everything that was booked is shared out.', openMore: 'There are more, older ones.',
    openColumns: { seq: 'Entry', kind: 'Kind', number: 'Number', place: 'Tank or line', product: 'Product', bookedAt: 'Counts at', nsv: 'Booked' },
    kinds: { receipt: 'Receipt', delivery: 'Delivery', adjustment: 'Adjustment', correction: 'Taken back' },
    change: 'Change owner in place …',
    panel: {
      title: (what: string): string => `Whose it is: ${what}`, inPlace: 'Change the owner in place', says: 'The shares must make what was booked, to the last digit.', saysInPlace: 'What one gives another takes: the shares add up to 0. Nobody can give what he has not.',
      place: 'Tank or line', product: 'Product', at: 'Counts at', party: (n: number): string => `Owner ${n}`, share: (n: number): string => `Share of owner ${n}`, add: 'One more owner', rest: 'missing', restNone: 'The shares make it.', takeRest: 'Take the rest', reason: 'Reason', by: 'Entered by', submit: 'Share out', done: (seq: number): string => `The shares stand as entry ${seq}.`,
      apportion: 'Apportion by', basis: { stock: 'stock at the end of', throughput: 'throughput of' }, from: 'from', to: 'to', propose: 'Propose',
    },
  },
  instruments: {
    title: 'Instruments', none: 'No instruments on record.', add: 'New instrument …', change: 'New version …', columns: { code: 'Code', kind: 'Kind', tank: 'Tank', serial: 'Serial', certificate: 'Certificate', verified: 'Verified', due: 'Due', state: 'Standing' },
    kinds: INSTRUMENT_WORDS,
    states: { 'in-time': 'in time', due: 'DUE', 'never-verified': 'DUE, never verified', 'no-interval': 'no interval', 'out-of-service': 'out of service' },
    verdicts: { within: 'within limits', outside: 'outside limits' },
    form: {
      newTitle: 'New instrument', title: (code: string): string => `${code}: new version`, code: 'Code, as gauges name it', kind: 'Kind', tank: 'Tank', carried: 'carried', serial: 'Serial number', uncertainty: 'Expanded uncertainty (k = 2)', certificate: 'Certificate', every: 'Verify every … days', inService: 'In service', yes: 'yes', no: 'no', remarks: 'Remarks', submit: 'Enter instrument', days: 'a whole number of days, 1 to 3660',
    },
  },
} as const
