import {
  applyIsometry,
  invertIsometry,
  isPointInRegion,
  type Isometry,
  pointToRingDistanceMm,
  type Region,
  type SlabPoint,
  tablePoint,
} from '../../geometry'
import type { SideChoices, Verdict } from '../../layout'
import { seededNormals, type SlabScale, thetaDraws } from '../../photo'
import { type Found, ready } from '../part'
import type { OptionAccuracy, SlabAccuracy } from '../planResult'
import type { CoverageResult, FootprintResult, PiecesResult, ResinResult } from '../tableResult'
import type { Option } from '../schema'
import { type BlankStretch, blankStretches, movedOut, sweptArea } from './drawnAreas'
import { marginAccuracy } from './marginAccuracy'
import { traceVariance } from './slabAccuracy'
import { tightPlaces } from './tightPlaces'

export interface OptionAccuracyInput {
  readonly scale: SlabScale
  readonly slab: SlabAccuracy
  readonly pose: Isometry
  readonly footprint: FootprintResult
  readonly sides: SideChoices
  readonly pieces: PiecesResult
  readonly coverage: CoverageResult
  readonly verdict: Verdict
  readonly resin: ResinResult | null
  readonly placements: Option['placements']
}

/** A gap that begins within this of a wood's edge lies against it, mm: above clipping and resampling. */
const AGAINST_MM = 1
/** An outline's stretch nearer than this to a piece's edge is that edge, mm: above clipping and resampling. */
const SAME_EDGE_MM = 0.5
const DRAWS = 600
const SEED = 20_260_302

/**
 * How sure the figures of one table on one slab are, as far as the photo goes: thicknesses and losses are taken as said.
 * Method: draws from Σ; each moves the traced edges, first order, and what they sweep inside the blank is wood or gap;
 * the margin by draws over its tight places. Rules: PLN-10.
 */
export function optionAccuracy(input: OptionAccuracyInput): Found<OptionAccuracy> {
  const { scale, slab, pose, footprint } = input
  const toTable = invertIsometry(pose)
  const main = blankStretches(slab.edge, toTable, footprint.blank)
  const holes = slab.voids.map(({ edge, depthMm }) => ({
    edge: blankStretches(edge, toTable, footprint.blank),
    depthMm,
  }))
  const draws = thetaDraws(scale, DRAWS, seededNormals(SEED))
  const wood = sweptArea(main, scale)
  const lost = holes.map(({ edge }) => sweptArea(edge, scale))
  const woodMm2 = draws.map((theta) => lost.reduce((sum, hole) => sum - hole(theta), wood(theta)))
  const isAtGap = gapMeter(input)
  const places = tightPlaces(slab.edge, toTable, footprint.finished, (stretch) => isAtGap(stretch, toTable))
  return ready({
    ...marginAccuracy({ ...input, places }),
    woodAreaSdMm2: Math.hypot(rms(woodMm2), traceSdMm2([main, ...holes.map(({ edge }) => edge)].flat())),
    resinSdLitres:
      input.resin === null || input.resin.isMeasured
        ? null
        : resinSd(scale, input.resin, draws, holes, [
            ...main.filter(({ stretch, reachMm }) => reachMm < 0 || isAtGap(stretch, toTable)),
            ...laidEdge(input, isAtGap),
          ]),
  })
}

const rms = (values: readonly number[]): number =>
  values.length === 0 ? 0 : Math.sqrt(values.reduce((sum, v) => sum + v * v, 0) / values.length)

const traceSdMm2 = (edge: readonly BlankStretch[]): number =>
  Math.sqrt(traceVariance(edge.filter(({ reachMm }) => reachMm > 0).map(({ stretch }) => stretch)))

interface Hole {
  readonly edge: readonly BlankStretch[]
  readonly depthMm: number | null
}

/** Edge gaps and through voids are as deep as the cast, other voids as deep as they are. */
function resinSd(
  scale: SlabScale,
  { castThicknessMm: castMm, gapLitres, mixLitres }: ResinResult,
  draws: readonly (readonly number[])[],
  holes: readonly Hole[],
  wood: readonly BlankStretch[],
): number {
  const deepMm = ({ depthMm }: Hole): number => Math.min(depthMm ?? castMm, castMm)
  const woodMm2 = sweptArea(wood, scale)
  const filled = holes.map((hole) => ({ mm2: sweptArea(hole.edge, scale), deepMm: deepMm(hole) }))
  const drawnMm3 = draws.map((theta) =>
    filled.reduce((sum, hole) => sum + hole.deepMm * hole.mm2(theta), -castMm * woodMm2(theta)),
  )
  const traceMm3 = Math.hypot(
    castMm * traceSdMm2(wood),
    ...holes.map((hole) => deepMm(hole) * traceSdMm2(hole.edge)),
  )
  const mixPerGap = gapLitres > 0 ? mixLitres / gapLitres : 1
  return (Math.hypot(rms(drawnMm3), traceMm3) / 1e6) * mixPerGap
}

type GapMeter = (stretch: BlankStretch['stretch'], toTable: Isometry) => boolean

/** Whether a gap lies against a stretch of wood: where another piece does, moving it fills or frees nothing. */
const gapMeter =
  ({ coverage: { gaps } }: OptionAccuracyInput): GapMeter =>
  (stretch, toTable) => {
    const at = applyIsometry(toTable, movedOut(stretch, AGAINST_MM), tablePoint)
    return gaps.some(({ region }) => isPointInRegion(at, region))
  }

/** The traced edges of the pieces that are laid into the table, as far as they lie in the blank against a gap. */
function laidEdge(input: OptionAccuracyInput, isAtGap: GapMeter): readonly BlankStretch[] {
  const { slab, pieces, placements, footprint } = input
  return placements.flatMap(({ pieceId, pose }) => {
    const piece = pieces.pieces.find((other) => other.pieceId === pieceId)
    if (piece === undefined) return []
    const edge = slab.edge.filter(
      (stretch) => isOnEdge(stretch.middle, piece.region) && isAtGap(stretch, pose),
    )
    return blankStretches(edge, pose, footprint.blank)
  })
}

const isOnEdge = (at: SlabPoint, region: Region<SlabPoint>): boolean =>
  pointToRingDistanceMm(at, region.outer) < SAME_EDGE_MM
