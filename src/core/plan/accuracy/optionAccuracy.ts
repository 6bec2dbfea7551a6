import {
  applyIsometry,
  invertIsometry,
  isPointInRing,
  type Isometry,
  pointToRingDistanceMm,
  type Region,
  type SlabPoint,
  tablePoint,
  type TablePoint,
} from '../../geometry'
import type { Verdict } from '../../layout'
import { type SlabScale, type ThetaGradient, thetaVariance } from '../../photo'
import { type Found, ready } from '../part'
import type { OptionAccuracy, SlabAccuracy } from '../planResult'
import type { CoverageResult, FootprintResult, PiecesResult, ResinResult } from '../tableResult'
import type { Option } from '../schema'
import type { EdgeStretch } from './edgeStretches'
import { areaGradient, minus, traceVariance } from './slabAccuracy'

export interface OptionAccuracyInput {
  readonly scale: SlabScale
  readonly slab: SlabAccuracy
  readonly pose: Isometry
  readonly footprint: FootprintResult
  readonly pieces: PiecesResult
  readonly coverage: CoverageResult
  readonly verdict: Verdict
  readonly resin: ResinResult | null
  readonly placements: Option['placements']
}

/** An outline's stretch nearer than this to a piece's edge is that edge, mm: above clipping and resampling. */
const SAME_EDGE_MM = 0.5

/**
 * How sure the figures of one table on one slab are, as far as the photo goes: thicknesses and losses are taken as said.
 * Method: ∮ shift ds over the parts of the traced edges that bound wood in the table; the margin at its tightest place.
 * Rules: PLN-10.
 */
export function optionAccuracy(input: OptionAccuracyInput): Found<OptionAccuracy> {
  const { scale, slab, pose, footprint } = input
  const toTable = invertIsometry(pose)
  const inBlank = (edge: readonly EdgeStretch[]): readonly EdgeStretch[] =>
    edge.filter(({ middle }) => isPointInRing(applyIsometry(toTable, middle, tablePoint), footprint.blank))
  const main = inBlank(slab.edge)
  const laid = laidEdge(input)
  const holes = slab.voids.map(({ edge, depthMm }) => ({ edge: inBlank(edge), depthMm }))
  const wood = holes.reduce(
    (sum, hole) => minus(sum, areaGradient(hole.edge, scale)),
    areaGradient(main, scale),
  )
  return ready({
    marginSdMm: marginSd(input, toTable, main),
    woodAreaSdMm2: Math.sqrt(
      thetaVariance(scale, wood) + traceVariance([...main, ...holes.flatMap(({ edge }) => edge)]),
    ),
    resinSdLitres:
      input.resin === null || input.resin.isMeasured
        ? null
        : resinSd(scale, [...main, ...laid], holes, input.resin),
  })
}

interface Hole {
  readonly edge: readonly EdgeStretch[]
  readonly depthMm: number | null
}

/** Edge gaps and through voids are as deep as the cast, other voids as deep as they are. */
function resinSd(
  scale: SlabScale,
  wood: readonly EdgeStretch[],
  holes: readonly Hole[],
  resin: ResinResult,
): number {
  const castMm = resin.castThicknessMm
  let gradient: ThetaGradient = areaGradient(wood, scale).map((v) => -v * castMm)
  let variance = traceVariance(wood) * castMm ** 2
  for (const { edge, depthMm } of holes) {
    const deepMm = Math.min(depthMm ?? castMm, castMm)
    const area = areaGradient(edge, scale)
    gradient = gradient.map((v, k) => v + (area[k] ?? 0) * deepMm)
    variance += traceVariance(edge) * deepMm ** 2
  }
  const mixPerGap = resin.gapLitres > 0 ? resin.mixLitres / resin.gapLitres : 1
  return (Math.sqrt(thetaVariance(scale, gradient) + variance) / 1e6) * mixPerGap
}

/** The traced edges of the pieces that are laid into the table, as far as they lie in the blank. */
function laidEdge({ slab, pieces, placements, footprint }: OptionAccuracyInput): readonly EdgeStretch[] {
  return placements.flatMap(({ pieceId, pose }) => {
    const piece = pieces.pieces.find((other) => other.pieceId === pieceId)
    if (piece === undefined) return []
    return slab.edge.filter(
      ({ middle }) =>
        isOnEdge(middle, piece.region) &&
        isPointInRing(applyIsometry(pose, middle, tablePoint), footprint.blank),
    )
  })
}

const isOnEdge = (at: SlabPoint, region: Region<SlabPoint>): boolean =>
  pointToRingDistanceMm(at, region.outer) < SAME_EDGE_MM

/** Of the spare wood, or of how far wood is short, at the place that decides; null where no place does. */
function marginSd(
  { scale, verdict, coverage, footprint, slab }: OptionAccuracyInput,
  toTable: Isometry,
  main: readonly EdgeStretch[],
): number | null {
  const at = ({ middle }: EdgeStretch): TablePoint => applyIsometry(toTable, middle, tablePoint)
  if (verdict.kind === 'off-slab') return null
  const isShort = verdict.kind === 'short' || verdict.kind === 'needs-fill'
  if (!isShort && coverage.spare === null) return null
  const candidates = isShort ? main.filter((s) => isPointInRing(at(s), footprint.finished)) : slab.edge
  const wantedMm = isShort ? verdict.depthMm : (coverage.spare?.distanceMm ?? 0)
  const tightest = nearestTo(candidates, wantedMm, (s) => pointToRingDistanceMm(at(s), footprint.finished))
  return tightest && Math.sqrt(thetaVariance(scale, tightest.shift) + tightest.traceSdMm ** 2)
}

function nearestTo(
  edge: readonly EdgeStretch[],
  wantedMm: number,
  distanceOf: (stretch: EdgeStretch) => number,
): EdgeStretch | null {
  let best: EdgeStretch | null = null
  let least = Number.POSITIVE_INFINITY
  for (const stretch of edge) {
    const off = Math.abs(distanceOf(stretch) - wantedMm)
    if (off >= least) continue
    best = stretch
    least = off
  }
  return best
}
