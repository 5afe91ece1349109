import type { Instrument } from '../../../core/ledger/index.ts'
import type { StockMovementKind } from '../../../core/transfer/index.ts'
import type { Commodity } from '../../../core/volume-correction/index.ts'

/** Kinds in plain words, for the window and for what an entry says. A kind without words does not compile. */
export const COMMODITY_WORDS: { readonly [C in Commodity]: string } = {
  crude: 'crude oil', refined: 'refined product', lube: 'lubricating oil', special: 'special application (given expansion factor)', lpg: 'light hydrocarbon (propane, butane)',
  chemical: 'aromatic hydrocarbon or cyclohexane', ethanol: 'ethanol', biodiesel: 'biodiesel', curve: 'product by its own curve', water: 'water',
}

export const STOCK_MOVEMENT_WORDS: { readonly [K in StockMovementKind]: string } = {
  'tank-to-tank': 'Tank to tank', blend: 'Blend', regrade: 'Regrade', 'water-draw-off': 'Water draw-off', 'line-fill': 'Line fill',
}

export const INSTRUMENT_WORDS: { readonly [K in Instrument['kind']]: string } = {
  'automatic-level': 'automatic level gauge', 'hydrostatic-probe': 'hydrostatic probe', hybrid: 'hybrid', tape: 'tape', thermometer: 'thermometer', hydrometer: 'hydrometer', 'density-meter': 'density meter',
  pressure: 'pressure gauge',
}
