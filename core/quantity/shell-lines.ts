import { discriminate, display, type Rounded } from '../rounding/index.ts'
import { shellCorrection, shellTemperature, type ShellTemperature, type Tank, type TankShape } from '../tank/index.ts'
import { writtenDigits, type Temperature } from '../units/index.ts'
import { exactLine, inputLine, roundedLine, type WorksheetLine } from '../worksheet/index.ts'

/**
 * Shell temperature and CTSh with their lines: Ta, TSh, Tcal, αs, CTSh. The liquid temperature stands on the line `t`.
 * Of spheres and lying cylinders the shell is not corrected: CTSh is 1, and the line says why.
 * @param tableBase temperature at which the shell has the table's dimensions
 * @source MPMS-12.1.1 CTSh
 * @checked CTSH-SCOPE
 */
export function shellLines(tank: Tank, liquid: Temperature, ambient: Temperature | undefined, tableBase: Temperature): { readonly ctsh: Rounded; readonly lines: readonly WorksheetLine[] } {
  if (tank.shape !== undefined && tank.shape !== 'upright-cylinder') return notCorrected(tank.shape)
  const air = tank.insulated ? undefined : ambient
  const shell = shellTemperature(liquid, air)
  const correction = shellCorrection(tank.shellMaterial, shell, tableBase)
  const difference = `ΔT = ${display(correction.difference.toNumber(), 4)} ${shell.unit}`
  return {
    ctsh: correction.rounded,
    lines: [
      ...(air === undefined ? [] : [inputLine({ symbol: 'Ta', name: 'Temperature of the air at the shell', value: writtenDigits(air), unit: air.unit, clause: 'MPMS-12.1.1 shell temperature' })]),
      temperatureLine(shell, liquid, air),
      inputLine({ symbol: 'Tcal', name: 'Base temperature of the capacity table', value: writtenDigits(tableBase), unit: tableBase.unit, clause: 'MPMS-2.2A capacity table' }),
      inputLine({ symbol: 'αs', name: `Linear expansion of the shell, ${tank.shellMaterial}`, value: correction.alpha.toFixed(), unit: `/${shell.unit}`, clause: correction.clause, notes: correction.note === '' ? [] : [correction.note] }),
      roundedLine({ symbol: 'CTSh', name: 'Correction for the effect of temperature on the shell', unit: '', formula: '1 + 2 αs ΔT + αs² ΔT², ΔT = TSh − Tcal', clause: 'MPMS-12.1.1 CTSh', from: ['TSh', 'Tcal', 'αs'], rounded: correction.rounded, notes: [difference] }),
    ],
  }
}

function temperatureLine(shell: ShellTemperature, liquid: Temperature, air: Temperature | undefined): WorksheetLine {
  const words = { symbol: 'TSh', name: 'Shell temperature', unit: shell.unit }
  if (shell.rounded === null) {
    const line = exactLine({ ...words, value: shell.value, formula: 't', from: ['t'], clause: 'MPMS-12.1.1 shell temperature', notes: ['insulated: the shell has the temperature of the liquid'] })
    return { ...line, value: writtenDigits(liquid) }
  }
  const notes = air === undefined || air.unit === liquid.unit ? [] : [`Ta taken in ${liquid.unit}`]
  return roundedLine({ ...words, rounded: shell.rounded, formula: '(7 × t + Ta) / 8', from: ['t', 'Ta'], notes })
}

function notCorrected(shape: TankShape): { readonly ctsh: Rounded; readonly lines: readonly WorksheetLine[] } {
  const ctsh = discriminate('CTSh', 1)
  const notes = [`a ${shape === 'sphere' ? 'sphere' : 'lying cylinder'}: the correction is for upright cylinders only`]
  return { ctsh, lines: [roundedLine({ symbol: 'CTSh', name: 'Correction for the effect of temperature on the shell', unit: '', formula: '1', clause: 'MPMS-12.1.1 CTSh', from: [], rounded: ctsh, notes })] }
}
