export const density = {
  title: 'Density', partsLabel: 'Benches', next: 'Next bench', previous: 'Bench before',
  parts: { correction: 'Volume correction', conversion: 'API, RD, kg/m³', blend: 'Blend', mass: 'Mass and weight', water: 'Water' },
  clear: 'Clear', bringBack: 'Bring back', sheet: 'What is given', result: 'What follows', worksheet: 'Worksheet',
  choose: 'choose …', optional: 'optional', ready: 'Nothing is missing.', notYet: 'Fill in the sheet to see what follows.', mend: 'Mend what is marked to see what follows.', writeHint: 'A bare number gets its usual unit.',
  settings: {
    commodity: 'Commodity', edition: 'Edition', baseTemperature: 'Base temperature', alpha: 'Expansion factor at 60 °F', molarMass: 'Molar mass of the vapour', component: 'Substance',
    content: 'Ethanol by mass', salinity: 'Salinity', figures: 'Figures of the factor',
  },
  hints: { alpha: { '/degF': '0.000510 /degF', '/degC': '0.000918 /degC' }, molarMass: '44.097 g/mol', content: '99.5 %', salinity: '35 PSU' },
  figures: { usual: 'four, as printed', five: 'five' },
  curve: {
    title: 'Product curve', certificate: 'Certificate', laboratory: 'Laboratory', date: 'Dated', tolerance: 'A density may be off by', toleranceHint: '0.5 %, if one is stated', dateHint: '2026-03-14', of: 'Lines give', points: 'Points of the curve',
    kinds: { density: 'density', vcf: 'factor (VCF)' }, temperature: 'Temperature', values: { density: 'Density', vcf: 'VCF' }, choose: 'Choose CSV …',
    hint: 'or paste the table into its first cell, or drop a file here', read: (points: number): string => `${points} ${points === 1 ? 'point' : 'points'} read`,
    lineTemperature: (line: number): string => `Line ${line}: temperature`, lineValue: (line: number, of: 'density' | 'vcf'): string => `Line ${line}: ${of === 'density' ? 'density' : 'VCF'}`, drop: (line: number): string => `Remove line ${line}`,
    notRead: (line: number, text: string): string => `Line ${line} of the text is not a temperature and a value: “${text}”`, tooMany: (most: number): string => `Only the first ${most} points were taken.`, unreadable: 'The file could not be read.',
    needs: { certificate: 'the number of the certificate', laboratory: 'the laboratory that gave it', date: 'the day of the certificate, as 2026-03-14', points: 'two points at least, coldest first' },
  },
  liquid: {
    product: 'As product', ownSettings: 'as set below', density: 'Density', instrument: 'Read by', instruments: { base: 'stated at base', hydrometer: 'glass hydrometer', meter: 'meter or laboratory' },
    densityTemperature: '… read at', densityPressure: '… under pressure',
  },
  correction: {
    temperature: 'Temperature', pressure: 'Pressure', rounding: 'Figures', roundings: { standard: 'as the standard rounds', none: 'every digit' },
    ctpl: 'CTPL', ctl: 'CTL', cpl: 'CPL', baseDensity: 'Base density', there: 'Density there', observed: 'CTPL where read', toAlternate: 'Volume there / where read', standard: 'By',
  },
  conversion: {
    meter: 'Meter factor', meters: { none: 'none', factor: 'found before', proving: 'from a proving' }, meterFactor: 'Factor', provingReference: 'Reference density', provingMeter: 'Meter showed then', proving: 'Proving of the meter',
    api: 'API gravity', relativeDensity: 'Relative density 60/60', density60: 'Density at 60 °F', density15: 'Density at 15 °C', density20: 'Density at 20 °C', factor: 'Density meter factor', standard: 'By',
  },
  blend: {
    baseTemperature: 'Base temperature', volumeUnit: 'Volume of the blend in', batch: 'Batch', density: 'Base density', amount: 'Volume or mass', add: 'Add batch', drop: (line: number): string => `Remove batch ${line}`, nameHint: (line: number): string => `batch ${line}`,
    lineName: (line: number): string => `Batch ${line}: name`, lineDensity: (line: number): string => `Batch ${line}: base density`, lineAmount: (line: number): string => `Batch ${line}: volume or mass`,
    blend: 'Base density of the blend', volume: 'Volume at base', mass: 'Mass in vacuum', noShrinkage: 'Volumes are taken to add up.', needsTwo: 'two batches at least',
  },
  mass: {
    baseTemperature: 'Base temperature', density: 'Base density', of: 'Given is', kinds: { volume: 'volume at base', mass: 'mass in vacuum', weight: 'weight in air' }, amount: 'Amount', convention: 'Weight in air by',
    conventions: { 'MPMS-11.5': 'API MPMS 11.5 (2009)', 'tables-1980': 'tables of 1980', 'short-form': 'short form of Table 56' }, unit: 'Unit', inVacuum: 'Mass in vacuum', inAir: 'Weight in air', volume: 'Volume at base', density3: 'density, kg/m³',
  },
  water: {
    temperature: 'Temperature', salinity: 'Salinity', equation: 'Equation', usual: 'usual: 11.4.1, with salinity UNESCO 44', reference: 'Reference temperature', density: 'Density of the water', ratio: 'CTDW, to the reference', standard: 'By',
  },
  lines: { symbol: 'Symbol', name: 'Quantity', formula: 'Formula', value: 'Value' },
} as const
