/** What is pumped in: its temperature [°C], base density [kg/m³], S&W and free water [m³]. */
export interface Cargo { readonly temperature: number; readonly density: number; readonly sedimentAndWater: number; readonly water: number }

/** One planned movement: day and hour of September, duration [h], net standard volume in the product's unit, the other party. */
export interface Planned {
  readonly tank: string; readonly day: number; readonly hour: number; readonly hours: number
  readonly volume: number; readonly party: string; readonly reference: string; readonly cargo?: Cargo
}

export interface Start { readonly tank: string; readonly volume: number; readonly water: number; readonly temperature: number; readonly density: number; readonly sedimentAndWater: number }

const api = (gravity: number): number => (141.5 / (gravity + 131.5)) * 999.016

/** Stocks at the gauge hour of the first day: net standard volume in the product's unit, water [m³]. */
export const STARTS: readonly Start[] = [
  { tank: 'TK-101', volume: 92_000, water: 42, temperature: 25.1, density: api(32.4), sedimentAndWater: 0.0024 },
  { tank: 'TK-102', volume: 38_500, water: 30, temperature: 23.8, density: api(32.9), sedimentAndWater: 0.0021 },
  { tank: 'TK-201', volume: 52_000, water: 3, temperature: 22.4, density: api(59.6), sedimentAndWater: 0 },
  { tank: 'TK-202', volume: 24_000, water: 4, temperature: 21.9, density: api(59.2), sedimentAndWater: 0 },
  { tank: 'TK-203', volume: 30_500, water: 2.5, temperature: 22.2, density: api(58.8), sedimentAndWater: 0 },
  { tank: 'TK-301', volume: 6200, water: 2, temperature: 23.4, density: 836.2, sedimentAndWater: 0 },
  { tank: 'TK-302', volume: 8100, water: 1.6, temperature: 22.7, density: 835.4, sedimentAndWater: 0 },
  { tank: 'TK-401', volume: 2300, water: 0.9, temperature: 55.4, density: 966.8, sedimentAndWater: 0.0008 },
]

const crude = (gravity: number, temperature: number, sedimentAndWater: number, water: number): Cargo => ({ temperature, density: api(gravity), sedimentAndWater, water })
const gasoline = (gravity: number, temperature: number): Cargo => ({ temperature, density: api(gravity), sedimentAndWater: 0, water: 0.3 })
const diesel = (density: number, temperature: number): Cargo => ({ temperature, density, sedimentAndWater: 0, water: 0.4 })
const fuel = (density: number, temperature: number): Cargo => ({ temperature, density, sedimentAndWater: 0.0012, water: 0.3 })

type Line = readonly [day: number, hour: number, hours: number, volume: number, party: string, reference: string, cargo?: Cargo]
const of = (tank: string, lines: readonly Line[]): readonly Planned[] =>
  lines.map(([day, hour, hours, volume, party, reference, cargo]) => ({ tank, day, hour, hours, volume, party, reference, ...(cargo === undefined ? {} : { cargo }) }))

/** A line with a cargo is a receipt, one without a delivery. */
export const PLAN: readonly Planned[] = [
  ...of('TK-101', [
    [2, 8.5, 13.5, 28_000, 'HRR', 'HRR-2609-01'], [5, 9, 19, 61_000, 'ORB', 'ORB-C-0905', crude(31.6, 28.4, 0.0046, 9)],
    [9, 8, 15.5, 40_000, 'HRR', 'HRR-2609-04'], [13, 7.75, 15, 38_000, 'HRR', 'HRR-2609-06'],
    [17, 8.25, 20, 70_000, 'ORB', 'ORB-C-0917', crude(33.1, 27.2, 0.0039, 8)], [21, 8, 16.5, 42_000, 'HRR', 'HRR-2609-10'],
    [25, 9, 14, 35_000, 'HRR', 'HRR-2609-12'], [28, 8.5, 18.5, 52_000, 'ORB', 'ORB-C-0928', crude(32.2, 25.9, 0.0042, 7)],
  ]),
  ...of('TK-102', [
    [3, 8, 19.5, 66_000, 'ORB', 'ORB-C-0903', crude(33.4, 27.9, 0.0044, 8)], [7, 8.25, 14.5, 36_000, 'HRR', 'HRR-2609-03'],
    [11, 8, 13.5, 33_000, 'HRR', 'HRR-2609-05'], [15, 9.25, 19, 72_000, 'ORB', 'ORB-C-0915', crude(31.9, 27.5, 0.0048, 10)],
    [19, 8, 15.5, 38_000, 'HRR', 'HRR-2609-08'], [23, 8.5, 12.5, 30_000, 'HRR', 'HRR-2609-11'],
    [27, 9, 18, 58_000, 'ORB', 'ORB-C-0927', crude(32.7, 26.2, 0.0041, 8)],
  ]),
  ...of('TK-201', [
    [2, 9.25, 9, 14_500, 'WXF', 'WXF-0902'], [6, 8.5, 9.5, 16_200, 'WXF', 'WXF-0906'], [9, 9, 14, 33_000, 'HRR', 'HRR-G-0909', gasoline(59.9, 24.6)],
    [14, 8.25, 9.5, 15_400, 'WXF', 'WXF-0914'], [19, 8.75, 10, 17_100, 'WXF', 'WXF-0919'], [22, 9, 13, 29_500, 'HRR', 'HRR-G-0922', gasoline(59.3, 23.7)],
    [27, 8.5, 9.5, 16_000, 'WXF', 'WXF-0927'],
  ]),
  ...of('TK-202', [
    [4, 9, 13.5, 31_500, 'HRR', 'HRR-G-0904', gasoline(59.5, 24.9)], [8, 8.5, 9.5, 15_800, 'WXF', 'WXF-0908'], [12, 8.75, 10, 16_600, 'WXF', 'WXF-0912'],
    [16, 9, 14.5, 35_000, 'HRR', 'HRR-G-0916', gasoline(59.8, 24.1)], [20, 8.5, 10, 17_300, 'WXF', 'WXF-0920'], [24, 9.25, 9, 14_900, 'WXF', 'WXF-0924'],
    [28, 9, 11.5, 24_000, 'HRR', 'HRR-G-0928', gasoline(59.4, 23.2)],
  ]),
  ...of('TK-203', [
    [3, 8.75, 8, 12_000, 'WXF', 'WXF-0903'], [10, 9, 12.5, 28_000, 'HRR', 'HRR-G-0910', gasoline(59.1, 24.3)], [13, 9.5, 8.5, 14_000, 'WXF', 'WXF-0913'],
    [18, 8.5, 7.5, 11_500, 'WXF', 'WXF-0918'], [26, 9, 11, 22_000, 'HRR', 'HRR-G-0926', gasoline(59, 23.4)],
  ]),
  ...of('TK-301', [
    [2, 8.25, 8.5, 2400, 'WXF', 'WXF-D-0902'], [5, 9.5, 15, 8200, 'ORB', 'ORB-D-0905', diesel(837.1, 26.8)], [10, 8.5, 10, 3100, 'WXF', 'WXF-D-0910'],
    [14, 9, 9.5, 2900, 'WXF', 'WXF-D-0914'], [19, 9.25, 14.5, 7600, 'ORB', 'ORB-D-0919', diesel(835.6, 25.9)], [24, 8.5, 10.5, 3400, 'WXF', 'WXF-D-0924'],
    [29, 8.25, 9, 2700, 'WXF', 'WXF-D-0929'],
  ]),
  ...of('TK-302', [
    [4, 8.5, 9, 2600, 'WXF', 'WXF-D-0904'], [8, 9, 8, 2200, 'WXF', 'WXF-D-0908'], [12, 9.25, 13, 5900, 'ORB', 'ORB-D-0912', diesel(836.4, 26.3)],
    [17, 8.5, 9.5, 2800, 'WXF', 'WXF-D-0917'], [21, 8.75, 8.5, 2300, 'WXF', 'WXF-D-0921'], [25, 9.5, 12, 4800, 'ORB', 'ORB-D-0925', diesel(835.1, 24.8)],
  ]),
  ...of('TK-401', [
    [3, 9, 11.5, 2900, 'ORB', 'ORB-F-0903', fuel(968.4, 61.5)], [9, 8.5, 9.5, 1500, 'SHB', 'SHB-0909'], [16, 8.75, 10, 1700, 'SHB', 'SHB-0916'],
    [23, 9.25, 11, 2600, 'ORB', 'ORB-F-0923', fuel(965.9, 60.8)], [29, 8.5, 9, 1400, 'SHB', 'SHB-0929'],
  ]),
]

/** Days on which every tank is gauged at the gauge hour; 31 is the first of October. */
export const INVENTORY_DAYS: readonly number[] = [1, 4, 7, 10, 13, 16, 19, 22, 25, 28, 31]

/** Days on which water is drawn from the bottom of a tank at seven in the morning. */
export const WATER_DRAWS: readonly { readonly tank: string; readonly day: number }[] = [
  { tank: 'TK-101', day: 4 }, { tank: 'TK-101', day: 13 }, { tank: 'TK-101', day: 24 }, { tank: 'TK-102', day: 10 }, { tank: 'TK-102', day: 22 }, { tank: 'TK-301', day: 22 },
]

/** The valve that passes: barrels a day, from one tank into the other. */
export const PASSING_VALVE = { from: 'TK-201', into: 'TK-202', perDay: 10 }

/** The delivery whose closing temperature was written with two figures exchanged, and when that was found. */
export const MISWRITTEN = { reference: 'WXF-D-0910', foundDay: 11, foundHour: 9.6 }
