export const probe = {
  title: 'Hydrostatic probe', titleOf: (tank: string): string => `Hydrostatic probe in ${tank}`, noTank: 'Choose a tank at the left first.', back: 'Back', draftTitle: (tank: string): string => `Probe ${tank}`,
  sheet: 'Probe as read', result: 'What the probe says', picture: 'Tank', file: 'Choose CSV …', fileHint: 'a reading as CSV, or drop it here', fileOfOther: (tank: string): string => `The file is of ${tank}, not of this tank.`,
  at: 'Time', by: 'Read by', timeHint: '2026-03-14 06:10', modules: 'Modules', addModule: 'Add module', dropModule: (name: string): string => `Remove module ${name}`, noModule: 'this one',
  columns: { name: 'Module', height: 'Height', pressure: 'Pressure', temperature: 'Temperature', offset: 'Zero offset' },
  fields: {
    gravity: 'Local free fall', vapourDensity: 'Vapour density', pressureUncertainty: 'u of a pressure', zeroLimit: 'Zero limit', datumOffset: 'Probe zero above datum', airDensity: 'Air density, if vented each',
    waterThreshold: 'Water above', waterDensity: 'Water density', dryDensity: 'Dry density', bulgingCoefficient: 'Bulging coefficient', bulgingTableDensity: '… allowed for in the table', roofMass: 'Roof not in the table',
  },
  hints: {
    gravity: '9.80665 m/s2', vapourDensity: '1.2 kg/m3', pressureUncertainty: '0.010 kPa', zeroLimit: '0.030 kPa', datumOffset: 'none', airDensity: 'one vent', waterThreshold: 'not looked for', waterDensity: 'taken whole',
    dryDensity: 'not known', bulgingCoefficient: 'none', bulgingTableDensity: 'none', roofMass: 'none',
  },
  fieldName: (module: string, column: string): string => `${module}: ${column.toLowerCase()}`,
  notYet: 'Fill in the modules to see what the probe says.', terms: 'More terms',
  head: { mass: 'Mass through the table', level: 'Level', water: 'Free water to', noWater: 'none seen', density: 'Product density', temperature: 'Product temperature', headMass: 'Mass from head', volume: 'Volume by level', volumeOfMass: 'Volume by mass', entrained: 'Entrained water, a hint' },
  plusMinus: (value: string, unit: string): string => `± ${value} ${unit}, k = 2`,
  strata: { label: 'Strata', from: 'From, mm', to: 'To, mm', density: 'Density, kg/m³', temperature: '°C', mass: 'Mass, kg', water: 'water' },
  difference: 'Why the two volumes differ', massLimit: (limit: string, unit: string, within: boolean, note: string): string => `${within ? 'Within' : 'Beyond'} ${limit} ${unit} (${note}).`,
  zero: {
    title: 'Zero of emerged modules', none: 'No module is emerged; their zeros cannot be checked now.', within: 'within', outside: 'outside limit', setOf: (name: string): string => `Set ${name} to zero`, offset: 'Is off by', applied: 'Taken off', module: 'Module', verdict: 'Limit', act: 'Set to zero',
    auto: 'Set what is within its limit', reason: 'Reason', history: 'Set before', by: (by: string, automatic: boolean): string => (automatic ? `by itself (${by})` : by), done: (seq: number): string => `The new offsets stand as entry ${seq}.`, timeNeeded: 'Give the time of the reading first.', reasonHint: 'why a person sets it',
  },
  use: { inventory: 'To an inventory sheet', receipt: 'Opens a receipt', delivery: 'Opens a delivery', opening: 'Fill the opening gauge', closing: 'Fill the closing gauge', failed: 'The transfer that it was for is no longer there.' },
  drawing: (tank: string): string => `Tank ${tank} in section, with the density and temperature of the probe's strata`, axisDensity: 'kg/m³', axisTemperature: '°C', chart: 'Density of the strata and temperature of the modules against height; the figures stand in the table beside it',
  source: { head: 'Filled from', probe: 'Probe', log: (line: number): string => `Log, line ${line}`, takeOff: (what: string): string => `Take ${what} off`, fromProbe: 'a probe', fromLog: 'a gauge log', from: (column: string, what: string): string => `${column}: fill from ${what}` },
  log: {
    title: 'Gauge log', titleOf: (tank: string): string => `Gauge log of ${tank}`, choose: 'Choose CSV …', hint: 'the log as CSV, or drop it here', tank: 'Tank in the log', chart: 'Level against time; still times shaded. The moments stand in the table and behind the slider.', moment: 'Moment',
    momentSays: (at: string, level: string, why: string, settled: boolean): string => `${at}, ${level}: ${settled ? 'still' : 'not still'}, ${why}`, setOpening: 'Takes as opening', setClosing: 'Takes as closing', toProbe: 'To the probe sheet', opening: 'Opening', closing: 'Closing', none: 'not chosen', movements: 'Movements',
    columns: { kind: 'Kind', from: 'Opening at', to: 'Closing at', change: 'Change' }, kinds: { receipt: 'Receipt', delivery: 'Delivery' }, noMovements: 'No movement between two still times was found.', fill: 'Fill the transfer', begin: (kind: string): string => `Begin a ${kind}`,
    rule: (rule: string): string => `Still: ${rule}.`, previous: 'Moment before', next: 'Moment after', notSettled: 'was not still; the ticket will say so', wrongOrder: 'The closing moment must be later than the opening one.', reading: 'Reading the log …', wrong: (count: number): string => (count === 1 ? '1 thing is wrong with the file' : `${count} things are wrong with the file`), earlierStill: 'Still moment before', laterStill: 'Still moment after',
  },
} as const
