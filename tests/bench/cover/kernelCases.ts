import polygonClipping from 'polygon-clipping'
import {
  type Region,
  regionsAreaMm2,
  intersectRegions,
  slabPoint,
  type SlabPoint,
} from '../../../src/core/geometry'
import { areaInBox, areaKernel, searchWood, type TurnedBox } from '../../../src/core/layout'
import { seededRandom } from '../../support/seededRandom'
import { meanCallMs } from './stopwatch'

/** Between two live edges of so many points in all, with two voids. */
function roughSlab(seed: number, points: number): Region<SlabPoint> {
  const random = seededRandom(seed)
  const half = Math.floor((points - 32) / 2)
  const edge = (y: number) =>
    Array.from({ length: half }, (_, i) => {
      const x = (2600 * i) / (half - 1)
      return slabPoint(x, y + 30 * Math.sin(x / 240) + random.between(-2, 2))
    })
  const hole = (x: number, y: number) =>
    Array.from({ length: 16 }, (_, i) =>
      slabPoint(x + 60 * Math.cos(-i * (Math.PI / 8)), y + 40 * Math.sin(-i * (Math.PI / 8))),
    )
  return { outer: [...edge(0), ...edge(850).toReversed()], holes: [hole(800, 400), hole(1700, 500)] }
}

const cornersOf = (
  { xMm, yMm, angleRad, halfLengthMm: a, halfWidthMm: b }: TurnedBox,
  pivot: readonly number[],
) => {
  const [cos, sin] = [Math.cos(angleRad), Math.sin(angleRad)]
  return [
    [-a, -b],
    [a, -b],
    [a, b],
    [-a, b],
  ].map(([u = 0, v = 0]) =>
    slabPoint((pivot[0] ?? 0) + xMm + u * cos - v * sin, (pivot[1] ?? 0) + yMm + u * sin + v * cos),
  )
}

/** The kernel beside two general clipping libraries on the same evaluations. */
export function kernelCase(seed: number, points: number) {
  const slab = roughSlab(seed, points)
  const wood = searchWood([slab])
  if (!wood.ok) throw new Error(wood.problem.code)
  const { edges, pivot } = wood.value
  const random = seededRandom(seed + 1)
  const boxes = Array.from({ length: 64 }, (): TurnedBox => ({
    xMm: random.between(-80, 80),
    yMm: random.between(-40, 40),
    angleRad: random.between(-0.06, 0.06),
    halfLengthMm: 1100,
    halfWidthMm: 420,
  }))
  let turn = 0
  const next = (): TurnedBox => {
    turn += 1
    const box = boxes[turn % boxes.length]
    if (box === undefined) throw new Error('no box')
    return box
  }
  const rings = [slab.outer, ...slab.holes].map((ring) => ring.map(([x, y]): [number, number] => [x, y]))
  const clipped = (box: TurnedBox): number =>
    regionsAreaMm2(intersectRegions([slab], [{ outer: cornersOf(box, pivot), holes: [] }]))
  const clippedByOther = (box: TurnedBox): number => {
    const corners = cornersOf(box, pivot).map(([x, y]): [number, number] => [x, y])
    return polygonClipping.intersection(rings, [corners]).flat(2).length
  }
  const worstMm2 = Math.max(...boxes.map((box) => Math.abs(areaInBox(edges, box) - clipped(box))))
  const areaUs = 1000 * meanCallMs(() => areaInBox(edges, next()), 2_000, 300)
  const gradientUs = 1000 * meanCallMs(() => areaKernel(edges, next()).perXMm, 2_000, 300)
  const gridUs = 1000 * meanCallMs(() => clipped(next()), 20, 500)
  const doublesUs = 1000 * meanCallMs(() => clippedByOther(next()), 20, 500)
  return {
    case: 'kernel',
    points: edges.count,
    areaUs,
    gradientUs,
    gridClippingUs: gridUs,
    doublesClippingUs: doublesUs,
    ratioToGrid: gridUs / areaUs,
    ratioToDoubles: doublesUs / areaUs,
    worstMm2,
  }
}
