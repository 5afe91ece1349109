import { expect, it } from 'vitest'
import { readingsOf } from '../../../renderer/register/readings.ts'
import { aClosingGauge, anOpeningGauge } from '../../support/snapshots.ts'

it('lays both gauges side by side as they were written, times on the clock of the terminal', () => {
  const readings = readingsOf(anOpeningGauge(), aClosingGauge({ level: { ullage: '3.750 m', observedReferenceHeight: '13.251 m' } }), 'Europe/Lisbon')
  const line = (name: string) => readings.find((reading) => reading.name === name)
  expect(line('Time')).toEqual({ name: 'Time', opening: '2026-03-14 06:10', closing: '2026-03-14 18:40' })
  expect(line('Innage')).toEqual({ name: 'Innage', opening: '4.000 m', closing: '–' })
  expect(line('Ullage')).toEqual({ name: 'Ullage', opening: '–', closing: '3.750 m' })
  expect(line('Reference height seen')?.closing).toBe('13.251 m')
  expect(line('Pressure above')).toBeUndefined()
})
