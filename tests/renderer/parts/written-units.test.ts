import { expect, it } from 'vitest'
import { withDegreeSign } from '../../../renderer/parts/written-units.ts'

it('shows a temperature with the sign for degrees, however it was written', () => {
  expect(['20.0 degC', '68 degF', '19.2 °C', ''].map(withDegreeSign)).toEqual(['20.0 °C', '68 °F', '19.2 °C', ''])
})
