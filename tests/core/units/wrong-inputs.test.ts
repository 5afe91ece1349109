import { describe, expect, it } from 'vitest'
import type { Finding, Outcome } from '../../../core/refusal/index.ts'
import { parseDensity, parseExpansion, parseLength, parseMass, parsePercent, parsePressure, parseTemperature, parseVolume } from '../../../core/units/index.ts'
import { findingsOf } from '../../support/must.ts'

type Parse = (text: string, path: string) => Outcome<unknown>
const LENGTH = 'a length as 12.345 m, 8421 mm, 495.625 in or 41 ft 3 5/8 in'
const INCHES = 'inches below 12 with halves to sixty-fourths, as 41 ft 3 5/8 in'
const VOLUME = 'a volume as 198.750 m3, 1250.50 bbl, 12000 gal or 500 L'
const MASS = 'a mass as 551100 kg, 551.1 t or 1215000 lb'

const TABLE: readonly (readonly [Parse, text: string, code: Finding['code'], limit: string])[] = [
  [parseLength, '12.345', 'unreadable-value', LENGTH],
  [parseLength, 'twelve metres', 'unreadable-value', LENGTH],
  [parseLength, '12,345 m', 'unreadable-value', LENGTH],
  [parseLength, '12.345 yd', 'unit-not-accepted', LENGTH],
  [parseLength, '41 ft 12 in', 'unreadable-value', INCHES],
  [parseLength, '41 ft 3 5/7 in', 'unreadable-value', INCHES],
  [parseLength, '41 ft 35/8 in', 'unreadable-value', INCHES],
  [parseTemperature, '', 'unreadable-value', 'a temperature as 88.3 degF or 31.25 degC'],
  [parseTemperature, 'NaN degF', 'unreadable-value', 'a temperature as 88.3 degF or 31.25 degC'],
  [parseTemperature, 'Infinity degC', 'unreadable-value', 'a temperature as 88.3 degF or 31.25 degC'],
  [parseTemperature, '20 m', 'unit-not-accepted', 'a temperature as 88.3 degF or 31.25 degC'],
  [parsePressure, '0', 'unreadable-value', 'a pressure as 0 psi, 350 kPa, 2.5 bar, or absolute as 101.3 kPaa'],
  [parsePressure, '1 atm', 'unit-not-accepted', 'a pressure as 0 psi, 350 kPa, 2.5 bar, or absolute as 101.3 kPaa'],
  [parseDensity, '--31.4 degAPI', 'unreadable-value', 'a density as 845.3 kg/m3, 31.4 degAPI, 0.8682 RD or 0.8453 g/cm3'],
  [parseDensity, '0x35 kg/m3', 'unit-not-accepted', 'a density as 845.3 kg/m3, 31.4 degAPI, 0.8682 RD or 0.8453 g/cm3'],
  [parseVolume, '1 250.50 bbl', 'unreadable-value', VOLUME],
  [parseVolume, '1,250.50 bbl', 'unreadable-value', VOLUME],
  [parseVolume, '12 ft3', 'unit-not-accepted', VOLUME],
  [parseVolume, `${'9'.repeat(41)} L`, 'unreadable-value', VOLUME],
  [parseMass, '12 stone', 'unit-not-accepted', MASS],
  [parseMass, '551.1e3 kg', 'unreadable-value', MASS],
  [parsePercent, '0.35', 'unreadable-value', 'a share as 0.35 %'],
  [parsePercent, '350 ppm', 'unit-not-accepted', 'a share as 0.35 %'],
  [parseExpansion, '510 e-6 /degF', 'unreadable-value', 'a thermal expansion factor as 0.000510 /degF or 0.000918 /degC'],
  [parseExpansion, '0.000510 /K', 'unit-not-accepted', 'a thermal expansion factor as 0.000510 /degF or 0.000918 /degC'],
]

describe('wrong inputs of units', () => {
  it.each(TABLE)('%s “%s”: %s', (parse, value, code, limit) => {
    expect(findingsOf(parse(value, 'opening.value'))).toEqual([{ code, path: 'opening.value', value, limit, clause: 'HOUSE units' }])
  })
})
