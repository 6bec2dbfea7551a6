import polygonClipping from 'polygon-clipping'
import { type Region, type Point, slabPoint } from '../../src/core/geometry'
import { computePlan, type Option, type Plan } from '../../src/core/plan'
import { randomPlan } from './randomPlan'
import { seededRandom } from './seededRandom'

type Polygons = Parameters<typeof polygonClipping.union>[0][]

/** A random plan whose pieces are cut up by random lines, some of which miss, cross, or are wider than what they cut. */
export function randomCutPlan(seed: number): Plan {
  const plan = namingOffcuts(randomPlan(seed))
  const random = seededRandom(seed * 17 + 3)
  const cutUp = (option: Option): Option => {
    const lines = Array.from({ length: random.integer(1, 6) }, (_, i) => {
      const piece = option.pieces[random.integer(0, Math.max(0, option.pieces.length - 1))]
      const [x, y] = piece?.anchor ?? slabPoint(0, 0)
      const [angle, off, long] = [random.between(0, 6.28), random.between(-250, 250), random.between(50, 900)]
      const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
      const at = (along: number) => slabPoint(x - sin * off + cos * along, y + cos * off + sin * along)
      return {
        kind: 'line' as const,
        id: `line${i}`,
        pieceId: piece?.id ?? 'nobody',
        from: at(-long),
        to: at(long),
        kerfMm: random.next() < 0.1 ? random.between(50, 400) : random.between(0, 6),
        wasteSide: random.next() < 0.5 ? ('left' as const) : ('right' as const),
      }
    })
    return { ...option, cuts: [...option.cuts, ...lines] }
  }
  return { ...plan, options: plan.options.map(cutUp) }
}

/** The plan with its named pieces where its offcuts are, as far as there are any, so that most of them can be laid. */
function namingOffcuts(plan: Plan): Plan {
  const [own] = [...computePlan(plan).options.values()]
  const offcuts =
    own?.pieces.state === 'ready' ? own.pieces.value.pieces.filter(({ use }) => use !== 'table') : []
  const named = (option: Option): Option => ({
    ...option,
    pieces: option.pieces.map((piece, i) => ({ ...piece, anchor: offcuts[i]?.anchor ?? piece.anchor })),
  })
  return { ...plan, options: plan.options.map(named) }
}

export interface Conservation {
  readonly seed: number
  /** Pieces + kerf − the slab's wood, mm²; the slab by the other library. */
  readonly slabMm2: number
  /** Named pieces and their parts: what lies in the blank, by the other library, − what the plan says, mm². */
  readonly laidMm2: number
  /** Wood in the blank + gaps − the blank without air, mm². */
  readonly blankMm2: number
  /** Gaps and air by the other library − the plan's, mm². */
  readonly gapsMm2: number
  readonly lineCuts: number
  readonly laidPieces: number
  readonly codes: readonly string[]
}

/** The balances of a plan, each term by its own route; null where the table lies on nothing. */
export function conservationOf(plan: Plan, seed: number): Conservation | null {
  const result = computePlan(plan)
  const [own] = [...result.options.values()]
  const [slab] = [...result.slabs.values()]
  if (own?.coverage.state !== 'ready' || own.pieces.state !== 'ready' || own.footprint.state !== 'ready')
    return null
  if (slab?.shape.state !== 'ready') return null
  const { outline, voids } = slab.shape.value
  const { mainWood, laid, gaps, ...coverage } = own.coverage.value
  const blank = [[closed(own.footprint.value.blank)]] as Polygons[number]
  const rings = voids.map(({ ring }) => [closed(ring)] as Polygons[number])
  const slabMm2 = areaOf(polygonClipping.difference([closed(outline)], ...rings))
  const inBlank = laid.flatMap((piece) => piece.inBlank)
  const wholeMm2 = areaOf(polygonClipping.difference(blank, ...asPolygons([...mainWood, ...inBlank])))
  const gapMm2 = gaps.reduce((sum, { areaMm2 }) => sum + areaMm2, 0)
  const woodMm2 = unionArea([...mainWood, ...inBlank])
  const airMm2 = areaOf(blank as never) - coverage.blankAreaMm2
  return {
    seed,
    slabMm2: own.pieces.value.pieceAreaMm2 + own.pieces.value.kerfAreaMm2 - slabMm2,
    laidMm2: coverage.mainAreaMm2 + coverage.laidAreaMm2 - woodMm2,
    blankMm2: woodMm2 + gapMm2 - coverage.blankAreaMm2,
    gapsMm2: wholeMm2 - gapMm2 - airMm2,
    lineCuts: own.pieces.value.cuts.filter(({ side }) => side === null).length,
    laidPieces: laid.filter(({ areaInBlankMm2 }) => areaInBlankMm2 > 0).length,
    codes: result.issues.map(({ code }) => code),
  }
}

const closed = (ring: readonly Point[]): [number, number][] =>
  [...ring, ...ring.slice(0, 1)].map(([x, y]): [number, number] => [x, y])

const asPolygons = (regions: readonly Region[]): Polygons =>
  regions.map(({ outer, holes }) => [outer, ...holes].map(closed))

const unionArea = (regions: readonly Region[]): number => {
  const [first, ...more] = asPolygons(regions)
  return first === undefined ? 0 : areaOf(polygonClipping.union(first, ...more))
}

function areaOf(polygons: readonly (readonly (readonly Point[])[])[]): number {
  const ringMm2 = (ring: readonly Point[]): number =>
    Math.abs(
      ring.reduce((sum, [x, y], i) => {
        const [nextX, nextY] = ring[(i + 1) % ring.length] ?? [x, y]
        const [originX, originY] = ring[0] ?? [0, 0]
        return sum + (x - originX) * (nextY - originY) - (nextX - originX) * (y - originY)
      }, 0) / 2,
    )
  return polygons.reduce(
    (sum, rings) => sum + rings.reduce((area, ring, i) => area + (i === 0 ? 1 : -1) * ringMm2(ring), 0),
    0,
  )
}
