import { type Point, type Region, regionsAreaMm2, regionsBounds, type SlabPoint } from '../../geometry'
import { ok, problem, type Result } from '../../units'
import { type EdgeSet, edgesOf } from './edgeSet'

/** As `numberAt` of edgeSet.ts, here so that it is inlined where modules are served one by one, too. */
const numberAt = (row: Float64Array, index: number): number => row[index] ?? 0

/** Wood made ready for searching: its regions and, as flat rows, its edges about a pivot in its middle. */
export interface SearchWood {
  readonly regions: readonly Region<SlabPoint>[]
  /** Middle of the wood's bounds; every search turns and measures about it. */
  readonly pivot: Point
  readonly edges: EdgeSet
  readonly areaMm2: number
  /** No wood lies further than this from the pivot, mm. */
  readonly radiusMm: number
}

/** Wood of less area than this carries no table, mm²: 1 cm². */
const LEAST_WOOD_MM2 = 100

/**
 * Wood to be searched.
 * @param regions clean regions in the slab frame, mm: outer rings positive, holes negative, nothing crossing (what
 *   `subtractRegions` returns); voids are holes
 * @returns 'cover-no-wood' when there is none
 */
export function searchWood(regions: readonly Region<SlabPoint>[]): Result<SearchWood> {
  const areaMm2 = regionsAreaMm2(regions)
  if (!(areaMm2 >= LEAST_WOOD_MM2)) return problem('cover-no-wood', {})
  const { minX, minY, maxX, maxY } = regionsBounds(regions)
  const pivot: Point = [(minX + maxX) / 2, (minY + maxY) / 2]
  const edges = edgesOf(regions, pivot)
  return ok({ regions, pivot, edges, areaMm2, radiusMm: radiusOf(edges) })
}

function radiusOf(edges: EdgeSet): number {
  let most = 0
  for (let i = 0; i < edges.count; i += 1) {
    most = Math.max(most, Math.hypot(numberAt(edges.ax, i), numberAt(edges.ay, i)))
  }
  return most
}

/** Is a place (relative to the pivot) in the wood? Boundary either way. */
export function isInWood(edges: EdgeSet, x: number, y: number): boolean {
  let inside = false
  const { ax, ay, bx, by, count } = edges
  for (let i = 0; i < count; i += 1) {
    const y1 = numberAt(ay, i)
    const y2 = numberAt(by, i)
    if (y1 <= y === y2 <= y) continue
    const x1 = numberAt(ax, i)
    if (x1 + ((numberAt(bx, i) - x1) * (y - y1)) / (y2 - y1) > x) inside = !inside
  }
  return inside
}
