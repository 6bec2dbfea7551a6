import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { tablePoint, type TablePoint } from '../geometry'
import { carrierShares } from './lifting'
import { massCentre } from './massCentre'
import { longestRoundTurnMm, passesDoor, passesLift, passesTurn, rectangleFits } from './passage'
import { feetOf, seatsRound, stance } from './stance'

const SEED = 20_261_128
console.info(`handling properties: seed ${SEED}`)

const box = (x: number, y: number, w: number, h: number): readonly TablePoint[] => [
  tablePoint(x, y),
  tablePoint(x + w, y),
  tablePoint(x + w, y + h),
  tablePoint(x, y + h),
]

describe('lifting', () => {
  it('HAND-1 says which share is above the published figures', () => {
    const [one, two, three, four] = carrierShares(60)
    expect(one).toMatchObject({ kgEach: 60, isAboveConstant: true, isAboveTeamGuide: true })
    expect(two).toMatchObject({ kgEach: 30, isAboveConstant: true, isAboveTeamGuide: true })
    // 20 kg each is under the constant for one, and 60 kg above what a team of three is thought to lift (34.5).
    expect(three).toMatchObject({ kgEach: 20, isAboveConstant: false, isAboveTeamGuide: true })
    expect(four).toMatchObject({
      kgEach: 15,
      isAboveConstant: false,
      teamGuideKg: null,
      isAboveTeamGuide: null,
    })
    expect(() => carrierShares(-1)).toThrow('mass')
  })
})

describe('mass and balance', () => {
  it('HAND-2 counts wood and resin each by its own weight, and a hole as nothing (by hand)', () => {
    const wood = {
      regions: [{ outer: box(0, 0, 1000, 1000), holes: [] }],
      thicknessMm: 40,
      densityKgPerM3: 600,
    }
    const resin = {
      regions: [{ outer: box(1000, 0, 1000, 1000), holes: [box(1200, 200, 500, 500).toReversed()] }],
      thicknessMm: 40,
      densityKgPerM3: 1100,
    }
    // 24 kg at 500; 44 − 11 = 33 kg at (44·1500 − 11·1450)/33.
    const found = massCentre([wood, resin])
    expect(found?.massKg).toBeCloseTo(57, 9)
    expect(found?.centre[0]).toBeCloseTo((24 * 500 + 44 * 1500 - 11 * 1450) / 57, 6)
    expect(massCentre([])).toBeNull()
  })
})

describe('stance', () => {
  const top = box(0, 0, 2000, 900)
  const load = { massKg: 70, centre: tablePoint(1000, 450) }

  it('HAND-3 finds the edge that tips first and the load that does it (by hand)', () => {
    const feet = feetOf(top, { kind: 'four-legs', insetLengthMm: 400, insetWidthMm: 100 })
    const found = stance(top, feet, load, 30)
    // Ends: 100 kg · 600/400 = 150; sides: 100 · 350/100 = 350.
    expect(found.worst?.tipsAtKg).toBeCloseTo(150, 6)
    expect(found.worst?.overhangMm).toBeCloseTo(400, 6)
    expect(found.isStanding).toBe(true)
    expect(found.edges).toHaveLength(4)
  })

  it('HAND-3 sees a table that falls by itself, and feet that leave nothing to tip over', () => {
    const feet = feetOf(top, { kind: 'four-legs', insetLengthMm: 100, insetWidthMm: 100 })
    expect(stance(top, feet, { massKg: 70, centre: tablePoint(30, 450) }, 0)).toMatchObject({
      isStanding: false,
    })
    expect(stance(top, top, load, 0).worst).toBeNull()
    expect(() => feetOf(top, { kind: 'pedestal', insetLengthMm: 1000, insetWidthMm: 1 })).toThrow('apart')
  })

  it('HAND-4 seats whole places only (by hand)', () => {
    expect(seatsRound(2000, 900)).toEqual({ alongEachSide: 3, atEachEnd: 1, total: 8 })
    expect(seatsRound(900, 2000)).toEqual({ alongEachSide: 3, atEachEnd: 1, total: 8 })
    expect(seatsRound(2600, 1300)).toEqual({ alongEachSide: 4, atEachEnd: 1, total: 10 })
    expect(seatsRound(1199, 500)).toEqual({ alongEachSide: 1, atEachEnd: 0, total: 2 })
  })
})

describe('will it go in', () => {
  const mm = (min: number, max: number) => fc.integer({ min, max })

  it('HAND-5 a larger opening never stops what a smaller lets through, and the door is tried turned', () => {
    fc.assert(
      fc.property(mm(1, 3000), mm(1, 2000), mm(300, 2000), mm(300, 2500), mm(0, 200), (p, q, a, b, more) => {
        if (rectangleFits([p, q], [a, b])) {
          expect(rectangleFits([p, q], [a + more, b])).toBe(true)
          expect(rectangleFits([Math.max(1, p - more), q], [a, b])).toBe(true)
        }
      }),
      { seed: SEED },
    )
    // 2100 mm wide leans across a door of 800 × 2000, whose diagonal is 2154: √(800² + 2000²).
    expect(
      passesDoor({ lengthMm: 3000, widthMm: 2100, thicknessMm: 20 }, { widthMm: 800, heightMm: 2000 }),
    ).toBe(true)
    expect(
      passesDoor({ lengthMm: 3000, widthMm: 2150, thicknessMm: 50 }, { widthMm: 800, heightMm: 2000 }),
    ).toBe(false)
  })

  it('HAND-5 a lift takes a top on edge along its longest floor line, tilted (by hand)', () => {
    const lift = { door: { widthMm: 900, heightMm: 2000 }, widthMm: 1100, depthMm: 1400, heightMm: 2200 }
    // The floor's diagonal is 1780 mm; 40 mm of thickness take a little of it: 1500 × 800 stands on edge.
    expect(passesLift({ lengthMm: 1500, widthMm: 800, thicknessMm: 40 }, lift)).toBe(true)
    expect(passesLift({ lengthMm: 2400, widthMm: 900, thicknessMm: 40 }, lift)).toBe(false)
    expect(passesLift({ lengthMm: 1500, widthMm: 800, thicknessMm: 1500 }, lift)).toBe(false)
  })

  it('HAND-6 a thicker or longer top never passes a turn where a lesser does not; headroom helps', () => {
    fc.assert(
      fc.property(mm(700, 2000), mm(700, 2000), mm(0, 300), mm(1, 200), (a, b, thick, more) => {
        expect(longestRoundTurnMm(a, b, thick + more)).toBeLessThan(longestRoundTurnMm(a, b, thick))
        expect(longestRoundTurnMm(a + more, b, thick)).toBeGreaterThan(longestRoundTurnMm(a, b, thick))
      }),
      { seed: SEED },
    )
    const turn = { beforeMm: 900, afterMm: 900, headroomMm: 900 }
    const top = { lengthMm: 2600, widthMm: 900, thicknessMm: 45 }
    // 2·(√2·900 − 45) = 2456 mm: too long when level, short enough with its end raised to 2.6 m.
    expect(passesTurn(top, turn)).toBe(false)
    expect(passesTurn(top, { ...turn, headroomMm: 2600 })).toBe(true)
    expect(longestRoundTurnMm(900, 900, 900)).toBe(0)
    expect(() => longestRoundTurnMm(0, 900, 10)).toThrow('width')
  })
})
