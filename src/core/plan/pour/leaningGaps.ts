import {
  applyIsometryToRing,
  intersectRegions,
  invertIsometry,
  offsetRegions,
  type Region,
  regionsAreaMm2,
  type Ring,
  type SlabPoint,
  subtractRegions,
  tablePoint,
  type TablePoint,
  uniteRegions,
} from '../../geometry'
import type { Option, Photo, Slab } from '../schema'
import type { CoverageResult } from '../tableResult'
import { castLevels } from './castLevels'

/** A section of a gap: its height above the floor of the form, and its area there. */
export interface HeightArea {
  readonly heightMm: number
  readonly areaMm2: number
}

/** How the gaps of a cast change with the height because the live edge leans. */
export interface LeaningGaps {
  /** One list for each gap of the coverage: an odd number of sections in equal steps, floor first; null: upright. */
  readonly sections: readonly (readonly HeightArea[] | null)[]
  /** Wood at the face that is up in the form, beyond what the traced face has, mm²; below zero: less. */
  readonly topMoreMm2: number
}

interface LeaningInput {
  readonly slab: Pick<Slab, 'edges' | 'capture'>
  readonly option: Pick<Option, 'resin' | 'placements'>
  readonly pose: NonNullable<Option['footprint']>['pose']
  readonly shape: { readonly outline: Ring<SlabPoint> }
  readonly coverage: CoverageResult
  readonly slabThicknessMm: number
}

/** Wood with a live edge of its own: the slab's, or a piece laid into a gap. */
interface Leaning {
  readonly wood: readonly Region<TablePoint>[]
  readonly outline: readonly Region<TablePoint>[]
  readonly isTracedUp: boolean
  /** No gap lies within the outline: what grows over the outline is all there. */
  readonly isWhole: boolean
}

interface Grown extends Leaning {
  /** How far the edge stands outside the traced line. */
  readonly byMm: number
}

/** The number of heights is doubled until no gap's volume changes by more than this share. */
const MOST_CHANGE = 1e-3
const MOST_PANELS = 16
/** Lines that touch are no farther apart than this. */
const TOUCHING_MM = 0.5
/** Less of a gap within the outline is two lines laid on each other. */
const LEAST_CUT_AWAY_MM2 = 50

/**
 * The gaps at many heights where the slab's edge leans: the live edge stands farther out (or in) by an amount that grows
 * evenly from the traced face to the other; sawn edges and voids stay upright.
 * @returns null while the edges are upright
 * Method: what is wood only below = wood grown by w, less the outline (round joins); what is wood only above = wood less
 * the outline shrunk by w: so only what borders on the traced line moves. Simpson's rule over the heights.
 * Rules: POUR-10.
 */
export function leaningGaps(input: LeaningInput): LeaningGaps | null {
  const { slab, option, coverage, slabThicknessMm } = input
  const bevel = slab.edges?.bevel
  if (bevel === undefined || bevel.kind === 'upright' || bevel.mm === 0) return null
  const otherFaceMm = tracedFaceOf(slab) === 'top' ? bevel.mm : -bevel.mm
  const { levelMm } = castLevels(option.resin, slabThicknessMm)
  const solids = solidsOf(input)
  const areasAt = (heightMm: number): readonly number[] =>
    sectionAreas(
      coverage.gaps,
      solids.map((solid) => ({ ...solid, byMm: otherFaceMm * shareAt(heightMm, slabThicknessMm, solid) })),
    )
  const rows = steadyRows(areasAt, levelMm)
  const atTop = levelMm === slabThicknessMm ? (rows.at(-1)?.areas ?? []) : areasAt(slabThicknessMm)
  return {
    sections: coverage.gaps.map((gap, index) =>
      gap.kind === 'void'
        ? null
        : rows.map(({ heightMm, areas }) => ({ heightMm, areaMm2: areas[index] ?? gap.areaMm2 })),
    ),
    topMoreMm2: coverage.gaps.reduce((sum, gap, n) => sum + gap.areaMm2 - (atTop[n] ?? gap.areaMm2), 0),
  }
}

/** The face that the outline was traced on; stations are taken on the top. */
const tracedFaceOf = ({ capture }: LeaningInput['slab']): Photo['face'] =>
  capture.kind === 'photo' ? (capture.photos[0]?.face ?? 'top') : 'top'

function solidsOf({ slab, option, coverage, shape, pose }: LeaningInput): readonly Leaning[] {
  const isTracedUp = (slab.edges?.faceUpInForm ?? 'top') === tracedFaceOf(slab)
  const outlineBy = (iso: LeaningInput['pose']): readonly Region<TablePoint>[] => [
    { outer: applyIsometryToRing(iso, shape.outline, tablePoint), holes: [] },
  ]
  const laid = coverage.placed.flatMap(({ placementId, inBlank }) => {
    const placement = option.placements.find(({ id }) => id === placementId)
    if (placement === undefined) return []
    // A piece that lies the other way round from the slab's own wood leans the other way.
    const isTurned = placement.pose.turnedOver !== pose.turnedOver
    return [
      {
        wood: inBlank,
        outline: outlineBy(placement.pose),
        isTracedUp: isTracedUp !== isTurned,
        isWhole: false,
      },
    ]
  })
  const outline = outlineBy(invertIsometry(pose))
  const edgeGaps = coverage.gaps.filter(({ kind }) => kind === 'edge').map(({ region }) => region)
  const isWhole = regionsAreaMm2(intersectRegions(edgeGaps, outline)) < LEAST_CUT_AWAY_MM2
  return [{ wood: coverage.mainWood, outline, isTracedUp, isWhole }, ...laid]
}

/** From 0 at the traced face to 1 at the other; above the slab as at its upper face. */
function shareAt(heightMm: number, slabThicknessMm: number, { isTracedUp }: Leaning): number {
  const share = Math.min(1, heightMm / slabThicknessMm)
  return isTracedUp ? 1 - share : share
}

/** What stands outside the traced line once the wood has grown. Voids lie within it and need not be known. */
function growthOf({ wood, outline, byMm, isWhole }: Grown): readonly Region<TablePoint>[] {
  if (isWhole) return offsetRegions(outline, byMm, 'round')
  const solid = wood.map(({ outer }) => ({ outer, holes: [] }))
  return subtractRegions(offsetRegions(solid, byMm, 'round'), outline)
}

interface Row {
  readonly heightMm: number
  readonly areas: readonly number[]
}

function steadyRows(areasAt: (heightMm: number) => readonly number[], levelMm: number): readonly Row[] {
  const rowAt = (heightMm: number): Row => ({ heightMm, areas: areasAt(heightMm) })
  let rows = [0, levelMm / 2, levelMm].map(rowAt)
  let volumes = volumesOf(rows, levelMm)
  for (let panels = 4; panels <= MOST_PANELS; panels *= 2) {
    rows = rows.flatMap((row, n) => {
      const next = rows[n + 1]
      return next === undefined ? [row] : [row, rowAt((row.heightMm + next.heightMm) / 2)]
    })
    const before = volumes
    volumes = volumesOf(rows, levelMm)
    if (volumes.every((volume, n) => Math.abs(volume - (before[n] ?? 0)) <= MOST_CHANGE * volume)) break
  }
  return rows
}

/** Simpson's rule, gap by gap. */
function volumesOf(rows: readonly Row[], levelMm: number): readonly number[] {
  const weightOf = (n: number): number => (n === 0 || n === rows.length - 1 ? 1 : n % 2 === 1 ? 4 : 2)
  const stepMm = levelMm / (rows.length - 1)
  return (rows[0]?.areas ?? []).map(
    (_, gap) => (stepMm / 3) * rows.reduce((sum, { areas }, n) => sum + weightOf(n) * (areas[gap] ?? 0), 0),
  )
}

function sectionAreas(gaps: CoverageResult['gaps'], solids: readonly Grown[]): readonly number[] {
  const wider = solids.filter(({ byMm }) => byMm > 0)
  const found = wider.map(growthOf)
  const grown = found.length > 1 ? uniteRegions(found.flat()) : found.flat()
  let open: readonly Region<TablePoint>[] = solids.flatMap(({ wood, outline, byMm }) =>
    byMm < 0 ? subtractRegions(wood, offsetRegions(outline, byMm, 'round')) : [],
  )
  const reachMm = Math.max(0, ...solids.map(({ byMm }) => -byMm))
  return gaps.map(({ kind, region, areaMm2 }) => {
    if (kind === 'void') return areaMm2
    const taken = grown.length === 0 ? 0 : regionsAreaMm2(intersectRegions([region], grown))
    if (open.length === 0) return Math.max(0, areaMm2 - taken)
    // What opens beside a gap belongs to it; beside the air of a kept edge it is no hollow.
    const near = offsetRegions([region], reachMm + TOUCHING_MM, 'round')
    const openedMm2 = regionsAreaMm2(intersectRegions(open, near))
    open = subtractRegions(open, near)
    return Math.max(0, areaMm2 - taken + openedMm2)
  })
}
