import polygonClipping, { type MultiPolygon } from 'polygon-clipping'
import type { Point, Region, Ring } from '../../src/core/geometry'
import { computePlan, type Plan, type PlanResult } from '../../src/core/plan'

/** One balance of a plan: what two routes to the same area differ by, mm². */
export interface Balance {
  readonly name: string
  readonly offMm2: number
}

export interface Balances {
  readonly balances: readonly Balance[]
  readonly isWoodLaid: boolean
}

const closed = (ring: Ring<Point>): [number, number][] => [...ring, ring[0] ?? [0, 0]].map(([x, y]) => [x, y])

const shapeOf = (regions: readonly Region<Point>[]): MultiPolygon =>
  regions.map(({ outer, holes }) => [closed(outer), ...holes.map(closed)])

const ringAreaMm2 = (ring: readonly (readonly [number, number])[]): number => {
  const [x0, y0] = ring[0] ?? [0, 0]
  return Math.abs(
    ring.reduce((sum, [x, y], at) => {
      const [nextX, nextY] = ring[(at + 1) % ring.length] ?? [x0, y0]
      return sum + ((x - x0) * (nextY - y0) - (nextX - x0) * (y - y0)) / 2
    }, 0),
  )
}

const areaMm2 = (shape: MultiPolygon): number =>
  shape.reduce(
    (sum, [outer, ...holes]) =>
      sum + ringAreaMm2(outer ?? []) - holes.reduce((inner, hole) => inner + ringAreaMm2(hole), 0),
    0,
  )

/** NaN where the other library gives up: it does so on a few of thousands of shapes. */
function minus(from: MultiPolygon, others: readonly MultiPolygon[]): number {
  try {
    return areaMm2(others.length === 0 ? from : polygonClipping.difference(from, ...others))
  } catch {
    return Number.NaN
  }
}

/**
 * The area balances of every option whose coverage could be worked out. Each figure of the program is held against a
 * route of its own: shapes that another library clips (polygon-clipping), and sums of other figures.
 */
export function balancesOf(plan: Plan, result: PlanResult = computePlan(plan)): readonly Balances[] {
  return [...result.options.values()].flatMap(({ coverage, pieces, footprint }) => {
    if (coverage.state !== 'ready' || pieces.state !== 'ready' || footprint.state !== 'ready') return []
    const shape = result.slabs.get(pieces.value.slabId)?.shape
    if (shape?.state !== 'ready') return []
    const c = coverage.value
    const gapsMm2 = c.gaps.reduce((sum, gap) => sum + gap.areaMm2, 0)
    const leaves = pieces.value.pieces
    const leavesMm2 = leaves.reduce((sum, piece) => sum + piece.areaMm2, 0)
    const tinyMm2 = pieces.value.pieceAreaMm2 - leavesMm2
    const wood = shapeOf(shape.value.wood)
    const slab = shapeOf([{ outer: shape.value.outline, holes: [] }])
    const voids = shape.value.voids.map(({ ring }) => shapeOf([{ outer: ring, holes: [] }]))
    const inTable = [shapeOf(c.mainWood), ...c.placed.map(({ inBlank }) => shapeOf(inBlank))]
    const blank = shapeOf([{ outer: footprint.value.blank, holes: [] }])
    // Past a live edge that is kept there is air, which takes no resin.
    const airMm2 = areaMm2(blank) - c.blankAreaMm2
    return [
      {
        isWoodLaid: c.laidAreaMm2 > 0,
        balances: compared([
          { name: 'slab less voids', offMm2: minus(slab, voids) - c.slabWoodAreaMm2 },
          {
            name: 'slab less pieces is kerf',
            offMm2:
              minus(
                wood,
                leaves.map(({ region }) => shapeOf([region])),
              ) -
              tinyMm2 -
              c.kerfAreaMm2,
          },
          {
            name: 'table, pieces left and kerf are the slab',
            offMm2: c.mainAreaMm2 + c.laidAreaMm2 + c.leftOverAreaMm2 + c.kerfAreaMm2 - c.slabWoodAreaMm2,
          },
          { name: 'blank less wood is gaps', offMm2: minus(blank, inTable) - airMm2 - gapsMm2 },
          {
            name: 'wood and gaps are the blank',
            offMm2: c.mainAreaMm2 + c.laidAreaMm2 + gapsMm2 - c.blankAreaMm2,
          },
        ]),
      },
    ]
  })
}

const compared = (balances: readonly Balance[]): readonly Balance[] =>
  balances.filter(({ offMm2 }) => !Number.isNaN(offMm2))

/** Every number in a result, however deep. */
export function numbersIn(value: unknown, into: number[] = []): readonly number[] {
  if (typeof value === 'number') into.push(value)
  else if (value instanceof Map || value instanceof Set)
    for (const item of value.values()) numbersIn(item, into)
  else if (typeof value === 'object' && value !== null) {
    for (const item of Object.values(value)) numbersIn(item, into)
  }
  return into
}
