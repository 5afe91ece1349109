import { BARREL, FOOT, INCH, POUND, type Shape } from './tank-shape.ts'

/** How gauges of a tank are written down. */
export type Writing = 'imperial' | 'metric'

export interface SampleProduct {
  readonly code: string; readonly name: string; readonly commodity: 'crude' | 'refined'; readonly baseTemperature: '60 degF' | '15 degC'
  readonly volumeUnit: 'bbl' | 'm3'; readonly massUnit: 't'; readonly densityUnit: 'degAPI' | 'kg/m3'
}
export const PRODUCTS: readonly SampleProduct[] = [
  { code: 'CRUDE', name: 'Mixed light crude', commodity: 'crude', baseTemperature: '60 degF', volumeUnit: 'bbl', massUnit: 't', densityUnit: 'degAPI' },
  { code: 'GASO95', name: 'Gasoline 95', commodity: 'refined', baseTemperature: '60 degF', volumeUnit: 'bbl', massUnit: 't', densityUnit: 'degAPI' },
  { code: 'DIESEL', name: 'Diesel 10 ppm', commodity: 'refined', baseTemperature: '15 degC', volumeUnit: 'm3', massUnit: 't', densityUnit: 'kg/m3' },
  { code: 'FUEL380', name: 'Fuel oil 380', commodity: 'refined', baseTemperature: '15 degC', volumeUnit: 'm3', massUnit: 't', densityUnit: 'kg/m3' },
]

export const LIMITS: readonly (readonly string[])[] = [
  ['CRUDE', '0.20 %', '0 bbl', 'deliveries', 'Storage agreement 2026, schedule C'],
  ['GASO95', '0.20 %', '0 bbl', 'deliveries', 'Storage agreement 2026, schedule C'],
  ['DIESEL', '0.12 %', '2 m3', 'deliveries', 'Storage agreement 2026, schedule C'],
  ['FUEL380', '0.20 %', '3 m3', 'receipts-and-deliveries', 'Storage agreement 2026, schedule D'],
]

export const PARTIES: readonly (readonly string[])[] = [
  ['CPT', 'Calder Point Terminal', 'Calder Point, North Mole'],
  ['ORB', 'Orrin Bay Trading', 'Orrin Bay, Quay Street 4'],
  ['HRR', 'Harrow Reach Refining', 'Harrow Reach, Works Road'],
  ['WXF', 'Wexmoor Fuels', 'Wexmoor, Depot Lane 12'],
  ['SHB', 'Saltmere Bunker Supply', 'Saltmere, Fish Dock'],
  ['FMS', 'Fennel Marsh Survey', 'Fennel Marsh, Ferry House'],
]

export const PEOPLE: readonly (readonly string[])[] = [
  ['ivo-sorrel', 'Ivo Sorrel', 'CPT', 'shift supervisor'],
  ['mara-teague', 'Mara Teague', 'CPT', 'terminal accountant'],
  ['dov-hallorin', 'Dov Hallorin', 'HRR', 'pipeline scheduler'],
  ['rhea-quint', 'Rhea Quint', 'WXF', 'supply coordinator'],
  ['tam-osgard', 'Tam Osgard', 'ORB', 'cargo representative'],
  ['nell-varga', 'Nell Varga', 'SHB', 'bunker master'],
  ['lise-fenn', 'Lise Fenn', 'FMS', 'cargo inspector'],
]

/** What some of them may do at a desk, once people are on record; two of them may book, so that one can approve what the other prepared. */
export const ROLES: Readonly<Record<string, string>> = { 'ivo-sorrel': 'administrator accountant', 'mara-teague': 'accountant analyst', 'lise-fenn': 'inspector' }

/** A tank: what its certificate says, and how it was built. */
export interface SampleTank {
  readonly code: string; readonly name: string; readonly product: string; readonly insulated: boolean; readonly writing: Writing; readonly byUllage: boolean
  readonly roof: 'none' | 'internal-floating' | 'external-floating'
  /** Weight of the roof [kg], and the density [kg/m³] for which the table deducts it, if it does. */
  readonly roofMass?: number; readonly roofReference?: number
  readonly written: { readonly mass?: string; readonly reference?: string; readonly printed?: string; readonly from?: string; readonly to?: string; readonly height: string; readonly tolerance: string; readonly datum: string }
  readonly printed?: { readonly referenceApi: number; readonly perApi: number }
  readonly shape: Shape
  readonly certificate: string; readonly issuedOn: string
}

const air = (density: number): number => 1.000149926 * density - 1.199407795
const api = (gravity: number): number => (141.5 / (gravity + 131.5)) * 999.016
const feet = { courseHeight: 8 * FOOT, step: INCH }
const metres = { courseHeight: 2, step: 0.01 }
const datum = (mm: number): string => `datum plate, ${String(mm)} mm above the floor at the gauge well`

export const TANKS: readonly SampleTank[] = [
  {
    code: 'TK-101', name: 'Crude tank 101', product: 'CRUDE', insulated: false, writing: 'imperial', byUllage: false, roof: 'external-floating', roofMass: 352_000 * POUND,
    written: { mass: '352000 lb', from: '5 ft 6 in', to: '7 ft 0 in', height: '51 ft 3 1/4 in', tolerance: '1/8 in', datum: datum(12) },
    shape: { seed: 101, radius: 75 * FOOT, height: 47 * FOOT, coneRise: 0.19, ...feet }, certificate: 'PCS-2024-1101', issuedOn: '2024-04-17',
  },
  {
    code: 'TK-102', name: 'Crude tank 102', product: 'CRUDE', insulated: false, writing: 'imperial', byUllage: false, roof: 'external-floating', roofMass: 305_000 * POUND, roofReference: api(32),
    printed: { referenceApi: 32, perApi: 6.16 * BARREL },
    written: { mass: '305000 lb', reference: '32.0 °API', printed: '6.16 bbl/degAPI', from: '5 ft 6 in', to: '7 ft 0 in', height: '51 ft 1 5/8 in', tolerance: '1/8 in', datum: datum(12) },
    shape: { seed: 102, radius: 70 * FOOT, height: 47 * FOOT, coneRise: 0.18, ...feet, roof: { displaced: (305_000 * POUND) / air(api(32)), from: 5.5 * FOOT, to: 7 * FOOT } }, certificate: 'PCS-2024-1102', issuedOn: '2024-04-19',
  },
  {
    code: 'TK-201', name: 'Gasoline tank 201', product: 'GASO95', insulated: false, writing: 'imperial', byUllage: false, roof: 'internal-floating', roofMass: 61_500 * POUND, roofReference: api(60),
    written: { mass: '61500 lb', reference: '60.0 °API', from: '4 ft 8 in', to: '5 ft 6 in', height: '50 ft 2 3/8 in', tolerance: '1/8 in', datum: datum(10) },
    shape: { seed: 201, radius: 55 * FOOT, height: 46 * FOOT, coneRise: 0.14, ...feet, roof: { displaced: (61_500 * POUND) / air(api(60)), from: (4 + 8 / 12) * FOOT, to: 5.5 * FOOT } }, certificate: 'PCS-2023-0844', issuedOn: '2023-10-05',
  },
  {
    code: 'TK-202', name: 'Gasoline tank 202', product: 'GASO95', insulated: false, writing: 'imperial', byUllage: false, roof: 'internal-floating', roofMass: 60_900 * POUND,
    written: { mass: '60900 lb', from: '4 ft 8 in', to: '5 ft 6 in', height: '50 ft 2 1/8 in', tolerance: '1/8 in', datum: datum(10) },
    shape: { seed: 202, radius: 55 * FOOT, height: 46 * FOOT, coneRise: 0.14, ...feet }, certificate: 'PCS-2023-0845', issuedOn: '2023-10-06',
  },
  {
    code: 'TK-203', name: 'Gasoline tank 203', product: 'GASO95', insulated: false, writing: 'imperial', byUllage: false, roof: 'external-floating', roofMass: 148_000 * POUND, roofReference: api(59),
    written: { mass: '148000 lb', reference: '59.0 °API', from: '5 ft 2 in', to: '6 ft 4 in', height: '49 ft 11 in', tolerance: '1/8 in', datum: datum(10) },
    shape: { seed: 203, radius: 50 * FOOT, height: 46 * FOOT, coneRise: 0.13, ...feet, roof: { displaced: (148_000 * POUND) / air(api(59)), from: (5 + 2 / 12) * FOOT, to: (6 + 4 / 12) * FOOT } }, certificate: 'PCS-2025-0212', issuedOn: '2025-02-26',
  },
  {
    code: 'TK-301', name: 'Diesel tank 301', product: 'DIESEL', insulated: false, writing: 'metric', byUllage: false, roof: 'none',
    written: { height: '17.462 m', tolerance: '3 mm', datum: datum(8) },
    shape: { seed: 301, radius: 18, height: 15.6, coneRise: 0.15, ...metres }, certificate: 'PCS-2022-3301', issuedOn: '2022-06-14',
  },
  {
    code: 'TK-302', name: 'Diesel tank 302', product: 'DIESEL', insulated: false, writing: 'metric', byUllage: true, roof: 'none',
    written: { height: '16.118 m', tolerance: '3 mm', datum: datum(8) },
    shape: { seed: 302, radius: 15, height: 14.8, coneRise: 0.12, ...metres }, certificate: 'PCS-2022-3302', issuedOn: '2022-06-15',
  },
  {
    code: 'TK-401', name: 'Fuel oil tank 401', product: 'FUEL380', insulated: true, writing: 'metric', byUllage: true, roof: 'none',
    written: { height: '15.240 m', tolerance: '5 mm', datum: datum(15) },
    shape: { seed: 401, radius: 12, height: 13.9, coneRise: 0.1, ...metres }, certificate: 'PCS-2025-0419', issuedOn: '2025-05-21',
  },
]
