import type { BaseTemperature, Commodity, VolumeCorrectionInput } from '../../core/volume-correction/index.ts'

type Written = Pick<VolumeCorrectionInput, 'alpha' | 'component' | 'content' | 'curve' | 'salinity' | 'molarMass'> & { readonly density: string; readonly temperature: string; readonly baseTemperature?: BaseTemperature }

/** For every commodity a liquid as it could stand in a tank: base density, settings, temperature; base temperature where it cannot be 15 °C. A commodity without one does not compile. */
export const LIQUIDS: { readonly [C in Commodity]: Written } = {
  crude: { density: '861.3 kg/m3', temperature: '24.5 degC' },
  refined: { density: '742.5 kg/m3', temperature: '24.5 degC' },
  lube: { density: '884.2 kg/m3', temperature: '48.0 degC' },
  special: { density: '780.0 kg/m3', alpha: '0.000510 /degF', temperature: '24.5 degC' },
  lpg: { density: '507.0 kg/m3', temperature: '22.0 degC' },
  chemical: { density: '884.2 kg/m3', component: 'benzene', temperature: '24.5 degC', baseTemperature: '60 degF' },
  ethanol: { density: '793.6 kg/m3', temperature: '24.5 degC', baseTemperature: '60 degF' },
  biodiesel: { density: '883.0 kg/m3', temperature: '24.5 degC', baseTemperature: '60 degF' },
  curve: {
    density: '1022.0 kg/m3', temperature: '24.5 degC',
    curve: { certificate: 'LC-2026-0031', laboratory: 'Invented Laboratory', date: '2026-02-03', tolerance: '0.1 %', points: [{ temperature: '10 degC', density: '1025.5 kg/m3' }, { temperature: '15 degC', density: '1022.0 kg/m3' }, { temperature: '20 degC', density: '1018.5 kg/m3' }, { temperature: '30 degC', density: '1011.4 kg/m3' }] },
  },
  water: { density: '999.1 kg/m3', temperature: '24.5 degC' },
}

/** The input of a correction for a commodity. */
export function anInput(commodity: Commodity, parts: Partial<VolumeCorrectionInput> = {}): VolumeCorrectionInput {
  const { density, ...settings } = LIQUIDS[commodity]
  return { commodity, baseTemperature: '15 degC', ...settings, density: { value: density }, ...parts }
}
