import { describe, expect, it } from 'vitest'
import { HARD_VARIANTS } from '../../../tests/support/hardVariants'
import { regionsFromRings, subtractRegions } from './booleans'
import { regionsAreaMm2 } from './regionArea'
import type { Ring } from './region'
import { reverseRing } from './reverseRing'
import { ringAreaMm2 } from './ringArea'

const box = (x: number, y: number, w: number, h: number): Ring => [
  [x, y],
  [x + w, y],
  [x + w, y + h],
  [x, y + h],
]

interface HoleFixture {
  readonly name: string
  readonly holes: readonly Ring[]
  /** Area of a 6000 mm square less these holes, by hand, mm². */
  readonly areaMm2: number
}

const holeFixtures: readonly HoleFixture[] = [
  {
    name: 'two holes that share an edge',
    holes: [box(1000, 1000, 1000, 2000), box(2000, 1000, 1000, 2000)],
    areaMm2: 36e6 - 4e6,
  },
  {
    name: 'two holes that touch in a corner',
    holes: [box(1000, 1000, 1000, 1000), box(2000, 2000, 1000, 1000)],
    areaMm2: 36e6 - 2e6,
  },
  {
    name: 'a hole that touches the outline in a point',
    holes: [
      [
        [0, 3000],
        [1500, 2000],
        [1500, 4000],
      ],
    ],
    areaMm2: 36e6 - 1.5e6,
  },
  {
    name: 'a hole that shares an edge with the outline',
    holes: [box(0, 1000, 1000, 1000)],
    areaMm2: 36e6 - 1e6,
  },
  {
    name: 'the same hole twice',
    holes: [box(2000, 2000, 1000, 1000), box(2000, 2000, 1000, 1000)],
    areaMm2: 36e6 - 1e6,
  },
  { name: 'a hole that is the whole outline', holes: [box(0, 0, 6000, 6000)], areaMm2: 0 },
  { name: 'a hole beyond the outline', holes: [box(7000, 7000, 1000, 1000)], areaMm2: 36e6 },
  { name: 'a hole that cuts the outline in two', holes: [box(2000, -1000, 1000, 8000)], areaMm2: 36e6 - 6e6 },
]

describe('hard holes', () => {
  const holeCases = holeFixtures.flatMap((fixture) =>
    HARD_VARIANTS.map((variant) => ({
      ...fixture,
      variant: variant.name,
      scale: variant.scale,
      map: variant.map,
    })),
  )

  it.each(holeCases)('$name, $variant (GEO-3, GEO-5)', ({ holes, areaMm2, scale, map }) => {
    const signed = (ring: Ring, sign: 1 | -1): Ring => {
      const mapped = ring.map(map)
      return Math.sign(ringAreaMm2(mapped)) === sign ? mapped : reverseRing(mapped)
    }
    const outline = signed(box(0, 0, 6000, 6000), 1)
    const negatives = holes.map((hole) => signed(hole, -1))
    const face = regionsFromRings([outline, ...negatives])
    const wholeMm2 = 36e6 * scale ** 2
    expect(regionsAreaMm2(face) / wholeMm2).toBeCloseTo(areaMm2 / 36e6, 6)
    // The same by subtracting solids: another road through the kernel.
    const solids = negatives.flatMap((hole) => regionsFromRings([reverseRing(hole)]))
    const other = subtractRegions(regionsFromRings([outline]), solids)
    expect(regionsAreaMm2(other) / wholeMm2).toBeCloseTo(areaMm2 / 36e6, 6)
  })
})
