import { describe, expect, it } from 'vitest'
import { packsForNeed } from './packsForNeed'

const packs = [
  { name: 'small', litres: 3, priceCents: 7000 },
  { name: 'large', litres: 10, priceCents: 18_000 },
]

describe('packsForNeed', () => {
  it('RES-20 adds the margin and takes off what is on the shelf (by hand)', () => {
    // 10 L and 10 % are 11 L, less 1.5 L on the shelf: 9.5 L, which one large pack covers.
    const found = packsForNeed(10, { packs, packMarginFraction: 0.1, haveLitres: 1.5 })
    expect(found).toMatchObject({ costCents: 18_000, litres: 10 })
    expect(found?.leftOverLitres).toBeCloseTo(0.5, 9)
  })

  it('RES-20 needs nothing where enough is on the shelf', () => {
    const found = packsForNeed(10, { packs, packMarginFraction: 0.1, haveLitres: 12 })
    expect(found).toMatchObject({ packs: [], costCents: 0, litres: 0 })
  })

  it('RES-9 leaves packs without a size out, and says nothing without any', () => {
    const bad = [{ name: 'empty', litres: 0, priceCents: 5 }]
    expect(packsForNeed(10, { packs: bad, packMarginFraction: 0, haveLitres: 0 })).toBeNull()
    expect(
      packsForNeed(10, { packs: [...bad, ...packs], packMarginFraction: 0, haveLitres: 0 })?.litres,
    ).toBe(10)
    expect(packsForNeed(6000, { packs, packMarginFraction: 0, haveLitres: 0 })).toBeNull()
  })
})
