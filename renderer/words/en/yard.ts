import { COMMODITY_WORDS } from '../../../main/operations/contracts/index.ts'

export const yard = {
  title: 'Yard', tanks: 'Tanks', products: 'Products', choose: 'Choose a tank or a product to see it.',
  columns: { code: 'Code', name: 'Name', product: 'Product', roof: 'Roof', certificate: 'Table', commodity: 'Commodity', base: 'Base', unit: 'Unit', limit: 'Limit' },
  noTanks: 'No tanks on record.', noProducts: 'No products on record.', newTank: 'New tank …', newProduct: 'New product …', terminal: 'Terminal …',
  edit: 'New version …', setLimit: 'Set limit …', unknown: (code: string): string => `There is nothing called ${code} on record.`,
  roofs: { none: 'cone', 'internal-floating': 'internal floating', 'external-floating': 'external floating' },
  materials: { 'mild-carbon-steel': 'mild carbon steel', 'stainless-304': 'stainless steel 304', 'stainless-316': 'stainless steel 316', 'stainless-17-4PH': 'stainless steel 17-4PH' },
  commodities: COMMODITY_WORDS,
  bases: { deliveries: 'of deliveries', receipts: 'of receipts', 'receipts-and-deliveries': 'of receipts and deliveries', 'opening-and-receipts': 'of opening and receipts' },
  densities: { 'kg/m3': 'kg/m³', degAPI: '°API', RD: 'relative density 60/60' },
  massUnits: { kg: 'kg', t: 't', lb: 'lb', 'short-ton': 'short ton', 'long-ton': 'long ton' },
  yes: 'yes', no: 'no',
  tank: {
    facts: {
      product: 'In service for', shell: 'Shell', insulated: 'Insulated', datum: 'Levels are measured from', reference: 'Reference gauge height', tolerance: 'May differ by', roof: 'Roof', roofMass: 'Roof mass', roofInTable: 'Table deducts the roof',
      roofDensity: '… for a density of', roofPrinted: 'Adjustment printed in the table', critical: 'Critical zone', certificate: 'Certificate', issuedBy: 'Issued by', issuedOn: 'Issued on', base: 'Table base temperature', volumeUnit: 'Table volumes in', rows: 'Rows', lastGauge: 'Last gauge',
    },
    between: (from: string, to: string): string => `${from} to ${to}`, gauge: (at: string, what: string): string => `${at}, ${what}`, never: 'not gauged yet',
    tableTitle: 'Capacity table', chartLabel: (code: string): string => `Line chart: volume of ${code} against level, and volume per millimetre; the rows stand in the table beside it`,
    level: 'Level', volume: 'Volume', step: 'per mm', moreRows: (shown: number, all: number): string => `Rows ${shown} of ${all}. Show more`,
  },
  tankForm: {
    newTitle: 'New tank', title: (code: string): string => `New version of ${code}`, says: 'A version counts from its effective time on; tickets keep the version they were computed with.',
    code: 'Code', name: 'Name', product: 'In service for', shellMaterial: 'Shell material', insulated: 'Insulated', datum: 'Levels are measured from', datumHint: 'datum plate, 35 mm above the floor', referenceGaugeHeight: 'Reference gauge height', tolerance: 'May differ by',
    roof: 'Roof', mass: 'Roof mass', inTable: 'Table deducts the roof', referenceDensity: '… for a density of', printed: 'Adjustment printed in the table', printedHint: '24.59 bbl/degAPI, if printed', criticalFrom: 'Critical zone from', criticalTo: 'to',
    shape: 'Shape', usualWaterCut: 'Usual water cut', usualHint: 'left out: no warning', table: 'Capacity table', tableChoose: 'Choose CSV …', tableHint: 'The certificate as CSV, or drop it here', tableKept: (certificate: string, rows: number): string => `Certificate ${certificate}, ${rows} rows`, tableMissing: 'No capacity table yet.', tableReading: 'Reading the table …',
    effectiveFrom: 'Effective from', by: 'Entered by', submit: 'Enter', choose: 'choose …', roofNone: 'none (cone)',
  },
  productForm: {
    newTitle: 'New product', title: (code: string): string => `New version of ${code}`, code: 'Code', name: 'Name', codeLimit: 'up to 16 capitals, digits and dashes, as DIESEL-10',
    airConvention: 'Weight in air by', airUsual: 'as the edition has it', says: 'Factors will be made by', allThere: 'Nothing is missing; ready to enter.', booking: 'Booking', correcting: 'Correction',
    volumeUnit: 'Booked in', massUnit: 'Mass in', densityUnit: 'Density as',
  },
  limitForm: { title: (product: string): string => `Limit on loss and gain of ${product}`, says: 'A share of what the limit is counted on, plus a fixed volume.', percent: 'Share', fixed: 'Plus fixed volume', base: 'Counted on', source: 'Set by: contract or rule' },
  terminalForm: { title: 'Terminal', code: 'Code', name: 'Name', zone: 'Time zone (IANA)', gaugeHour: 'Measurement day closes at', zoneHint: 'Europe/Lisbon', from: 'In force from (left empty: from now on)', says: 'The code begins every ticket number. The gauge hour closes the measurement day, on the clock of the zone.' },
  product: {
    factorTitle: 'What produces its factors', curveTitle: 'Points of its curve', noFactor: 'no density gives a factor', volumesBy: { rounded: 'by the factors as they are rounded and printed', unrounded: 'by the unrounded factors' },
    facts: { commodity: 'Commodity', factor: 'Factors by', edition: 'Edition', volumes: 'Volumes', air: 'Weight in air', base: 'Base temperature', volume: 'Booked in', mass: 'Mass in', density: 'Density as', tanks: 'Tanks', limit: 'Limit on loss and gain', source: 'Limit set by' },
    noLimit: 'none set', limit: (percent: string, base: string, fixed: string): string => `${percent} ${base}${fixed === '' ? '' : `, plus ${fixed}`}`,
  },
  time: { unreadable: 'Write year, month, day and hour, as 2026-03-14 06:00.', 'does-not-exist': 'The clock was put forward over this time.', 'happens-twice': 'This time came twice. Write the offset behind it, as +01:00.' },
  timeHint: '2026-03-14 06:00',
} as const
