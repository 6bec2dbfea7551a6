import { expect, it } from 'vitest'
import { savedCents } from './savedCents'

it('takes the mean price of the packs, to the cent', () => {
  // By hand: 8 L for 276.00 are 34.50 a litre; 1.5 L of it 51.75.
  expect(savedCents(1.5, { costCents: 27_600, mixLitres: 8 })).toBe(5175)
})

it('says nothing where there is no price or nothing to mix', () => {
  expect(savedCents(1, { costCents: null, mixLitres: 8 })).toBeNull()
  expect(savedCents(1, { costCents: 27_600, mixLitres: 0 })).toBeNull()
})
