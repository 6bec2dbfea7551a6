import {
  type Region,
  ringBounds,
  type Ring,
  type SlabPoint,
  subtractRegions,
  type TablePoint,
} from '../../geometry'
import {
  type CoverTask,
  finishedRing,
  frontierWidths,
  type GrainLimit,
  NO_WISHES,
  type PoseWishes,
  type TableOutline,
} from '../../layout'
import type { SlabShapeResult } from '../planResult'
import type { Option, Slab } from '../schema'
import { driedRegions, dryingOf } from './drying'

type Task<K extends CoverTask['kind']> = Extract<CoverTask, { kind: K }>

export interface CoverSubject {
  readonly option: Option
  readonly slab: Slab
  readonly shape: SlabShapeResult
}

/** Extra worth of wood where the maker wants it, beside wood elsewhere. Common practice, no source. */
const WANTED_EDGE_WORTH = 2
const VOID_COST = { welcome: 0, 'as-gaps': 1, unwelcome: 3 } as const
/** A figure to keep, or a defect to keep out, outweighs this share of the top. */
const PLACE_SHARE = 0.5

export interface TableSize {
  readonly lengthMm: number
  readonly widthMm: number
}

/** Length and width of the finished top. */
export function sizeOf(outline: TableOutline): TableSize {
  if (outline.kind !== 'free') return { lengthMm: outline.lengthMm, widthMm: outline.widthMm }
  const { minX, minY, maxX, maxY } = ringBounds(outline.ring)
  return { lengthMm: maxX - minX, widthMm: maxY - minY }
}

/** Slab with its voids filled: resin in them is as good as wood where the maker says so. Bark never is: it is dug out. */
function solidRegions({ outline, voids }: SlabShapeResult): readonly Region<SlabPoint>[] {
  const bark = voids.filter(({ kind }) => kind === 'bark').map(({ ring }) => ({ outer: ring, holes: [] }))
  const solid = [{ outer: outline, holes: [] }]
  return bark.length === 0 ? solid : subtractRegions(solid, bark)
}

/** What counts as wood, as wide as it will be at the pour. Rules: CHO-2, CHO-3. */
export function woodToSearch({ option, slab, shape }: CoverSubject): readonly Region<SlabPoint>[] {
  const regions = option.cover.voids === 'welcome' ? solidRegions(shape) : shape.wood
  return driedRegions(regions, dryingOf(slab).lossFraction)
}

const allWood = ({ slab, shape }: CoverSubject): readonly Region<SlabPoint>[] =>
  driedRegions(shape.wood, dryingOf(slab).lossFraction)

/** The grain runs along the datum. */
const grainOf = ({ cover }: Option): GrainLimit | null =>
  cover.grainWithinRad === null ? null : { directionRad: 0, withinRad: cover.grainWithinRad }

/** What the maker wants of the place, for the search. */
function wishesOf({ option, slab, shape }: CoverSubject): PoseWishes {
  const { cover, table } = option
  const { lengthMm, widthMm } = sizeOf(table.outline)
  const loss = dryingOf(slab).lossFraction
  const worthMm2 = PLACE_SHARE * lengthMm * widthMm
  return {
    ...NO_WISHES,
    longEdgeWorth: cover.woodAt === 'long-edges' ? WANTED_EDGE_WORTH : 0,
    endWorth: cover.woodAt === 'ends' ? WANTED_EDGE_WORTH : 0,
    voidCost: VOID_COST[cover.voids],
    zones: shape.places.map(({ kind, ring, areaMm2 }) => ({
      regions: driedRegions([{ outer: ring, holes: [] }], loss),
      worthPerMm2: (kind === 'figure' ? worthMm2 : -worthMm2) / areaMm2,
    })),
    grain: grainOf(option),
  }
}

/** Where a table of the option's size lies best. */
export const bestPlaceTask = (subject: CoverSubject): Task<'bestPose'> => ({
  kind: 'bestPose',
  regions: allWood(subject),
  ...sizeOf(subject.option.table.outline),
  wishes: wishesOf(subject),
})

/** The longest table of the option's width, of whole wood or with resin up to a share. */
export const largestTask = (subject: CoverSubject, resinShare: number): Task<'largestTable'> => ({
  kind: 'largestTable',
  regions: resinShare > 0 ? allWood(subject) : woodToSearch(subject),
  widthMm: sizeOf(subject.option.table.outline).widthMm,
  resinShare,
  grain: grainOf(subject.option),
})

/** The curve reaches from half the table's width to somewhat beyond it. */
const CURVE_FROM = 0.5
const CURVE_TO = 1.2

/** Length against width, round the option's own width. */
export function frontierTask(subject: CoverSubject, resinShare: number): Task<'frontier'> {
  const { widthMm } = sizeOf(subject.option.table.outline)
  return {
    kind: 'frontier',
    regions: resinShare > 0 ? allWood(subject) : woodToSearch(subject),
    widthsMm: frontierWidths(CURVE_FROM * widthMm, CURVE_TO * widthMm),
    resinShare,
    grain: grainOf(subject.option),
  }
}

/** A round side bends one way only: such an outline has a margin all round. */
export function isConvexOutline(ring: Ring<TablePoint>): boolean {
  const turns = ring.map((b, k) => {
    const a = ring[(k + ring.length - 1) % ring.length] ?? b
    const c = ring[(k + 1) % ring.length] ?? b
    return (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0])
  })
  return turns.every((turn) => turn >= 0)
}

/** How much there is to spare round the top, or by how little it misses; how far it may grow where it bends inwards. */
export function marginTask(subject: CoverSubject): Task<'largestShape'> {
  const outline = finishedRing(subject.option.table.outline)
  return {
    kind: 'largestShape',
    regions: woodToSearch(subject),
    outline,
    growth: isConvexOutline(outline) ? 'margin' : 'factor',
    grain: grainOf(subject.option),
  }
}

/** The largest top of the same shape. */
export const growthTask = (subject: CoverSubject): Task<'largestShape'> => ({
  kind: 'largestShape',
  regions: woodToSearch(subject),
  outline: finishedRing(subject.option.table.outline),
  growth: 'factor',
  grain: grainOf(subject.option),
})

/** Which long sides keep their live edge. */
export function keptSides({ table }: Option): 'both' | 'one' | null {
  const live = (['far', 'near'] as const).filter((side) => table.sides[side].finish === 'live')
  if (live.length === 2) return 'both'
  return live.length === 1 ? 'one' : null
}

/** The longest table that keeps its live edge and is nowhere narrower than the option's width. */
export const keptTask = (subject: CoverSubject, keep: 'both' | 'one'): Task<'keptTable'> => ({
  kind: 'keptTable',
  regions: woodToSearch(subject),
  keep,
  leastWidthMm: sizeOf(subject.option.table.outline).widthMm,
  grain: grainOf(subject.option),
})

/** Two of these slabs for the option's table. */
export const twoSlabsTask = (option: Option, subjects: readonly CoverSubject[]): Task<'twoSlabs'> => ({
  kind: 'twoSlabs',
  slabs: subjects.map((subject) => ({
    id: subject.slab.id,
    regions: woodToSearch(subject),
    grain: grainOf(option),
  })),
  ...sizeOf(option.table.outline),
  jointMm: option.leastJointMm,
  mostBandMm: option.cover.mostBandMm,
})
