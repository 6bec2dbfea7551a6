import { describe, expect, it } from 'vitest'
import { roundedUp } from './roundedUp'

describe('roundedUp', () => {
  it('buys whole pieces and metres and quarters of a litre, never less than is needed (by hand)', () => {
    expect(roundedUp(17, '')).toBe(17)
    expect(roundedUp(17.1, '')).toBe(18)
    expect(roundedUp(6.02, 'm')).toBe(7)
    expect(roundedUp(1.01, 'L')).toBe(1.25)
    expect(roundedUp(0.1 + 0.2 + 0.7, 'm²')).toBe(1)
  })
})
