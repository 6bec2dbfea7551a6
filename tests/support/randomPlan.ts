import type { PxPoint } from '../../src/core/geometry'
import { slabPoint } from '../../src/core/geometry'
import type { Option, Plan } from '../../src/core/plan'
import { flatOption, flatPlan, flatPx, flatSlab } from './flatPlan'
import { randomSlab } from './randomSlab'
import { type SeededRandom, seededRandom } from './seededRandom'

const FINISHES = ['sawn', 'filled', 'live'] as const
const SIDES = ['start', 'end', 'far', 'near'] as const

/** A legal plan on an invented slab: any table, pose, finishes, cuts and placed pieces. The same seed gives the same plan. */
export function randomPlan(seed: number): Plan {
  const random = seededRandom(seed)
  const slab = randomSlab(seed)
  const toPx = (ring: readonly (readonly [number, number])[]): readonly PxPoint[] =>
    ring.map(([x, y]) => flatPx(x, y))
  const plan = flatPlan(
    flatSlab({
      outline: toPx(slab.outer),
      voids: slab.holes.map((ring) => ({
        ring: toPx(ring),
        depthMm: random.next() < 0.5 ? null : random.between(1, 80),
      })),
      thicknessMm: random.between(0, 1) < 0.1 ? null : random.between(20, 90),
    }),
    randomOption(random),
  )
  return { ...plan, id: `random-${seed}` }
}

function randomOption(random: SeededRandom): Option {
  const option = flatOption(random.between(300, 3500), random.between(200, 1500), {
    xMm: random.between(-800, 800),
    yMm: random.between(-600, 400),
    angleRad: random.between(-0.6, 0.6),
  })
  const side = () => ({
    finish: FINISHES[random.integer(0, 2)] ?? 'filled',
    oversizeMm: random.next() < 0.5 ? 0 : random.between(0, 30),
  })
  const kerfMm = random.between(0, 6)
  const pieces = Array.from({ length: random.integer(0, 3) }, (_, index) => ({
    id: `piece${index}`,
    name: `P${index}`,
    slabId: 'slab',
    anchor: slabPoint(random.between(-1500, 1500), random.between(-700, 700)),
  }))
  return {
    ...option,
    table: { ...option.table, sides: { start: side(), end: side(), far: side(), near: side() } },
    cuts: SIDES.map((name) => ({ kind: 'footprint' as const, id: name, side: name, kerfMm })),
    pieces,
    placements: pieces.map(({ id }) => ({
      id: `at-${id}`,
      pieceId: id,
      pose: {
        xMm: random.between(-500, 2500),
        yMm: random.between(-500, 1500),
        angleRad: random.between(-3, 3),
        turnedOver: random.next() < 0.5,
      },
    })),
    resin: {
      ...option.resin,
      castThicknessMm: random.next() < 0.5 ? null : random.between(10, 120),
      clearanceMm: random.next() < 0.5 ? 0 : random.between(1, 10),
      floodMm: random.next() < 0.7 ? null : random.between(1, 5),
      underCupMm: random.next() < 0.7 ? 0 : random.between(1, 20),
    },
  }
}
