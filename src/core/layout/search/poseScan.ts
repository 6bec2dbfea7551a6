import { type Region, simplifyRing } from '../../geometry'
import { type RasterFrame, CoverageRaster } from './coverageRaster'
import { edgesOf, numberAt } from './edgeSet'
import type { MiddlePose, WorthTerm } from './poseWorth'
import type { SearchWood } from './searchWood'
import { turnedExtent } from './turnedExtent'

const CELL_MM = 25
const SIMPLIFY_MM = 2

/** A pose with its worth as the raster sees it, mm². */
export interface ScannedPose {
  readonly pose: MiddlePose
  readonly worthMm2: number
}

/** The worth's terms made ready for scanning: simplified, and gathered by the regions that they share. */
export type ScanTerms = readonly (readonly WorthTerm[])[]

export function scanTerms(terms: readonly WorthTerm[], wood: SearchWood): ScanTerms {
  const zones = new Map<readonly Region[], readonly WorthTerm[]>()
  for (const term of terms) {
    const others = zones.get(term.regions) ?? []
    const edges = others[0]?.edges ?? edgesOf(term.regions.map(simplified), wood.pivot)
    zones.set(term.regions, [...others, { ...term, edges }])
  }
  return [...zones.values()]
}

const simplified = ({ outer, holes }: Region): Region => ({
  outer: simplifyRing(outer, SIMPLIFY_MM),
  holes: holes.map((hole) => simplifyRing(hole, SIMPLIFY_MM)),
})

/** The best place of the table's middle at one angle, on a grid over the wood's bounds. */
export function scannedPose(zones: ScanTerms, wood: SearchWood, angleRad: number): ScannedPose {
  const { minU, maxU, minV, maxV } = turnedExtent(wood.edges, angleRad)
  const frame: RasterFrame = {
    minU,
    minV,
    cellMm: CELL_MM,
    columns: Math.ceil((maxU - minU) / CELL_MM),
    rows: Math.ceil((maxV - minV) / CELL_MM),
  }
  const places = new Float64Array(frame.columns * frame.rows)
  for (const terms of zones) {
    const first = terms[0]
    if (first === undefined) continue
    const raster = new CoverageRaster(first.edges, angleRad, frame)
    for (const term of terms) raster.addBand(places, term)
  }
  return bestPlace(places, frame, angleRad)
}

function bestPlace(places: Float64Array, frame: RasterFrame, angleRad: number): ScannedPose {
  let best = 0
  for (let at = 1; at < places.length; at += 1) if (numberAt(places, at) > numberAt(places, best)) best = at
  const u = frame.minU + Math.floor(best / frame.rows) * frame.cellMm
  const v = frame.minV + (best % frame.rows) * frame.cellMm
  const [cos, sin] = [Math.cos(angleRad), Math.sin(angleRad)]
  return {
    pose: { xMm: u * cos - v * sin, yMm: u * sin + v * cos, angleRad },
    worthMm2: numberAt(places, best) * frame.cellMm * frame.cellMm,
  }
}

/** Poses nearer than this would climb to the same top. */
const APART_MM = 60
const APART_RAD = 0.08

/** The best of some poses that are not near a better one. */
export function bestApart(poses: readonly ScannedPose[], count: number): readonly ScannedPose[] {
  const kept: ScannedPose[] = []
  for (const next of poses.toSorted((p, q) => q.worthMm2 - p.worthMm2)) {
    if (kept.length === count) break
    if (kept.every(({ pose }) => !isNear(pose, next.pose))) kept.push(next)
  }
  return kept
}

const isNear = (p: MiddlePose, q: MiddlePose): boolean =>
  Math.hypot(p.xMm - q.xMm, p.yMm - q.yMm) < APART_MM && Math.abs(p.angleRad - q.angleRad) < APART_RAD
