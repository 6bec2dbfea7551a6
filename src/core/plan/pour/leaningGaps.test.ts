import { describe, expect, it } from 'vitest'
import { flatBox, flatOption, flatPlan, flatPx, flatSlab } from '../../../../tests/support/flatPlan'
import { isPointInRing, pointToRingDistanceMm, pxPoint } from '../../geometry'
import { computePlan } from '../computePlan'
import type { Part } from '../part'
import type { Option, Plan, Slab } from '../schema'
import { ANSWERS_ON_THE_SPOT } from './slowAnswers'

const THICK_MM = 50
/** Near side 60 mm short: a gap of 2000 × 60 mm. */
const STRIP = flatSlab({ outline: flatBox(-200, -150, 2000, 640) })

const leaning = (slab: Slab, mm: number, faceUpInForm: 'top' | 'underside' = 'top'): Slab => ({
  ...slab,
  edges: { bevel: { kind: 'wider', mm }, faceUpInForm },
})

const planOf = (slab: Slab, resin: Partial<Option['resin']> = {}, more: Partial<Option> = {}): Plan => {
  const option = flatOption(2000, 800, { xMm: -100, yMm: -100 })
  return flatPlan(slab, { ...option, ...more, resin: { ...option.resin, ...resin } })
}

function valueOf<T>(part: Part<T> | undefined): T {
  if (part?.state !== 'ready') throw new Error(`the part is ${part?.state}`)
  return part.value
}

const optionOf = (plan: Plan) => computePlan(plan, ANSWERS_ON_THE_SPOT).options.get('option')
const litresOf = (plan: Plan): number => valueOf(optionOf(plan)?.resin).gapLitres

/** A slab that lies within the blank, with a bent edge all round. */
const WAVES = Array.from({ length: 160 }, (_, n) => {
  const turn = (2 * Math.PI * n) / 160
  const bend = 1 + 0.06 * Math.sin(7 * turn)
  return pxPoint(900 + 850 * bend * Math.cos(turn), 300 + 300 * bend * Math.sin(turn))
})

/** Litres by cells of 4 mm: how much of its height each cell has open, from its distance to the edge alone. */
function byCells(mm: number): number {
  let mm3 = 0
  for (let x = -98; x < 1900; x += 4) {
    for (let y = -98; y < 700; y += 4) {
      const at = pxPoint(x, y)
      const share = pointToRingDistanceMm(at, WAVES) / Math.abs(mm)
      const openBeside = mm > 0 ? Math.min(1, share) : 1
      const openWithin = mm > 0 ? 0 : Math.max(0, 1 - share)
      mm3 += 16 * THICK_MM * (isPointInRing(at, WAVES) ? openWithin : openBeside)
    }
  }
  return mm3 / 1e6
}

describe('leaningGaps', () => {
  it('POUR-10 fills a strip beside a leaning edge as the prismoidal formula says (h/6 · (A₀ + 4 Aₘ + A₁))', () => {
    // 2000 × 40 at the floor, 2000 × 50 half way, 2000 × 60 at the top.
    const wider = ((THICK_MM / 6) * 2000 * (40 + 4 * 50 + 60)) / 1e6
    expect(litresOf(planOf(leaning(STRIP, 20)))).toBeCloseTo(wider, 6)
    const narrower = ((THICK_MM / 6) * 2000 * (80 + 4 * 70 + 60)) / 1e6
    expect(litresOf(planOf(leaning(STRIP, -20)))).toBeCloseTo(narrower, 6)
  })

  it('POUR-10 agrees with the prismoidal formula where corners are rounded: A(w) = a·b + 2 (a + b) w + π w²', () => {
    const island = flatSlab({ outline: flatBox(0, 0, 1800, 600) })
    const gapAt = (w: number): number => 2000 * 800 - (1800 * 600 + 2 * (1800 + 600) * w + Math.PI * w * w)
    const litres = ((THICK_MM / 6) * (gapAt(30) + 4 * gapAt(15) + gapAt(0))) / 1e6
    expect(litresOf(planOf(leaning(island, 30))) / litres).toBeCloseTo(1, 4)
  })

  it('POUR-10 agrees with a numeric integration by another way round a bent edge, wider and narrower', () => {
    for (const mm of [24, -24]) {
      const litres = litresOf(planOf(leaning(flatSlab({ outline: WAVES.map(([x, y]) => flatPx(x, y)) }), mm)))
      expect(Math.abs(litres / byCells(mm) - 1)).toBeLessThan(2e-3)
    }
  })

  it('POUR-10 counts heights from the floor of the form: which face is up matters to a half-high cast', () => {
    // Top up: the edge stands out 20 to 10 mm over the lower 25 mm, 15 on average; underside up: 0 to 10.
    const half = { castThicknessMm: 25 }
    expect(litresOf(planOf(leaning(STRIP, 20), half))).toBeCloseTo((2000 * 45 * 25) / 1e6, 6)
    expect(litresOf(planOf(leaning(STRIP, 20, 'underside'), half))).toBeCloseTo((2000 * 55 * 25) / 1e6, 6)
  })

  it('POUR-10 floods the face that is up: gap and wood together are the blank at every height', () => {
    const plan = planOf(leaning(STRIP, 20, 'underside'), { floodMm: 2 })
    const litres = (2000 * 50 * THICK_MM + 2000 * 800 * 2) / 1e6
    expect(Math.abs(litresOf(plan) / litres - 1)).toBeLessThan(1e-3)
  })

  it('POUR-10 moves the traced edge alone: beside a laid offcut whose sawn edge faces the gap nothing changes', () => {
    const laid: Partial<Option> = {
      pieces: [{ id: 'strip', name: 'Strip', slabId: 'slab', anchor: [900, -125] as never }],
      placements: [
        { id: 'p', pieceId: 'strip', pose: { xMm: 100, yMm: 890, angleRad: 0, turnedOver: false } },
      ],
    }
    expect(litresOf(planOf(leaning(STRIP, 10), {}, laid))).toBeCloseTo((2000 * 13 * THICK_MM) / 1e6, 3)
  })

  it('POUR-5 POUR-10 has the layers take just what the litres say, and warns of a gap wider below', () => {
    const option = optionOf(planOf(leaning(STRIP, -30)))
    const layers = valueOf(option?.pour).heat?.layers ?? []
    const poured = layers.reduce((sum, { need }) => sum + need.gapLitres, 0)
    expect(poured).toBeCloseTo(valueOf(option?.resin).gapLitres, 6)
    expect(valueOf(option?.pour).notices.map(({ code }) => code)).toContain('gap-wider-below')
  })

  it('POUR-10 changes nothing while edges are upright', () => {
    const upright: Slab = { ...STRIP, edges: { bevel: { kind: 'upright' }, faceUpInForm: 'underside' } }
    for (const slab of [upright, leaning(STRIP, 0)]) {
      expect(optionOf(planOf(slab))).toEqual(optionOf(planOf(STRIP)))
    }
  })
})
