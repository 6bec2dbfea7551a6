// Deep imports on purpose: the package's index also brings triangulation and two more modules into the bundle.
import type { Path64 } from 'clipper2-ts/dist/Core.js'
import { ClipType, FillRule, PathType } from 'clipper2-ts/dist/Core.js'
import type { PolyPath64 } from 'clipper2-ts/dist/Engine.js'
import { Clipper64, PolyTree64 } from 'clipper2-ts/dist/Engine.js'
import { ClipperOffset, EndType, JoinType } from 'clipper2-ts/dist/Offset.js'
import { InvariantError } from '../units'
import { brandedPoint } from './brandedPoint'
import { ringBounds } from './bounds'
import type { Point } from './point'
import type { Region, Ring } from './region'
import { simplifyRing } from './simplifyRing'
import {
  ARC_TOLERANCE_MM,
  ARC_TOLERANCE_PER_OFFSET,
  CLIP_GRID_MM,
  CLIP_SIMPLIFY_MM,
  CLIP_VERTEX_LIMIT,
  MITRE_LIMIT,
} from './tolerance'

// The only file of the project that knows the clipping library.

export type ClipKind = 'unite' | 'intersect' | 'subtract'
export type OffsetJoin = 'round' | 'mitre' | 'square'

const CLIP_TYPES = {
  unite: ClipType.Union,
  intersect: ClipType.Intersection,
  subtract: ClipType.Difference,
} as const
const JOIN_TYPES = { round: JoinType.Round, mitre: JoinType.Miter, square: JoinType.Square } as const

/**
 * Boolean operation on signed rings, slivers included.
 * @param kind    'unite' takes both lists together; 'subtract' takes b away from a
 * @param a,b     outer rings positive, holes negative, mm. A place belongs to a list's face when more positive than
 *   negative rings enclose it: so overlapping holes and holes that run over the edge do what a maker expects, and a
 *   stray negative ring encloses nothing.
 * @returns regions whose vertices are the given points, unrounded, wherever the kernel kept them; only new crossing
 *   points lie on the grid
 * @throws InvariantError when a coordinate is not finite
 * Approximation: vertices are rounded to CLIP_GRID_MM; a ring above CLIP_VERTEX_LIMIT vertices is first simplified by
 * CLIP_SIMPLIFY_MM (always the same way, so that A ∩ B and A − B still fit together).
 */
export function clipRings<P extends Point>(
  kind: ClipKind,
  a: readonly Ring<P>[],
  b: readonly Ring<P>[],
): readonly Region<P>[] {
  const grid = new ClipGrid<P>([...a, ...b])
  const clipper = new Clipper64()
  clipper.addPaths(grid.pathsOf(a), PathType.Subject)
  clipper.addPaths(grid.pathsOf(b), PathType.Clip)
  const tree = new PolyTree64()
  clipper.execute(CLIP_TYPES[kind], FillRule.Positive, tree)
  return grid.regionsOf(tree)
}

/**
 * Rings grown (or shrunk, when deltaMm is negative), slivers included.
 * @param rings clean rings that neither cross nor overlap: a union's result; anything else loses lobes
 * Approximation: grid as above; round corners are chords inside their arc, off by at most
 * `arcToleranceMm`.
 */
export function offsetRings<P extends Point>(
  rings: readonly Ring<P>[],
  deltaMm: number,
  join: OffsetJoin,
): readonly Region<P>[] {
  const grid = new ClipGrid<P>(rings)
  const offset = new ClipperOffset(MITRE_LIMIT, arcToleranceMm(deltaMm) / CLIP_GRID_MM)
  offset.addPaths(grid.pathsOf(rings), JOIN_TYPES[join], EndType.Polygon)
  const tree = new PolyTree64()
  offset.execute(deltaMm / CLIP_GRID_MM, tree)
  return grid.regionsOf(tree)
}

/** Greatest gap between a round corner of an offset and its chords, mm. */
export const arcToleranceMm = (deltaMm: number): number =>
  Math.min(ARC_TOLERANCE_MM, Math.abs(deltaMm) * ARC_TOLERANCE_PER_OFFSET)

/**
 * The integer grid of one operation: centred on its rings, so that the kernel's products stay exact in doubles up to
 * 18 m across wherever the rings lie, and remembering which given point each grid point stands for.
 */
class ClipGrid<P extends Point> {
  private readonly originX: number
  private readonly originY: number
  private readonly known = new Map<number, P[]>()

  constructor(rings: readonly Ring<P>[]) {
    const points = rings.flat()
    if (points.some(([x, y]) => !Number.isFinite(x) || !Number.isFinite(y)))
      throw new InvariantError('a coordinate is not finite', { rings: rings.length })
    const box = points.length === 0 ? { minX: 0, minY: 0, maxX: 0, maxY: 0 } : ringBounds(points)
    this.originX = Math.round((box.minX + box.maxX) / 2 / CLIP_GRID_MM)
    this.originY = Math.round((box.minY + box.maxY) / 2 / CLIP_GRID_MM)
  }

  /** Rings of fewer than three points enclose nothing and are left out; the kernel stumbles over empty ones. */
  pathsOf(rings: readonly Ring<P>[]): Path64[] {
    return rings.filter((ring) => ring.length > 2).map((ring) => thinned(ring).map((p) => this.gridPoint(p)))
  }

  regionsOf(tree: PolyTree64): readonly Region<P>[] {
    return childrenOf(tree).flatMap((outer) => this.regionsUnder(outer))
  }

  /** An outer path with its holes; islands within the holes are regions of their own. */
  private regionsUnder(outer: PolyPath64): readonly Region<P>[] {
    const holes = childrenOf(outer)
    const region = { outer: this.ringOf(outer), holes: holes.map((hole) => this.ringOf(hole)) }
    return [
      region,
      ...holes.flatMap((hole) => childrenOf(hole).flatMap((island) => this.regionsUnder(island))),
    ]
  }

  private gridPoint(p: P): { x: number; y: number } {
    const x = this.gridX(p)
    const column = this.known.get(x)
    if (column === undefined) this.known.set(x, [p])
    else column.push(p)
    return { x, y: this.gridY(p) }
  }

  private gridX = (p: Point): number => Math.round(p[0] / CLIP_GRID_MM) - this.originX
  private gridY = (p: Point): number => Math.round(p[1] / CLIP_GRID_MM) - this.originY

  private ringOf(path: PolyPath64): Ring<P> {
    return (path.poly ?? []).map(({ x, y }) => {
      const given = this.known.get(x)?.find((p) => this.gridY(p) === y)
      return given ?? brandedPoint<P>((x + this.originX) * CLIP_GRID_MM, (y + this.originY) * CLIP_GRID_MM)
    })
  }
}

const childrenOf = (path: PolyPath64): readonly PolyPath64[] =>
  Array.from({ length: path.count }, (_, i) => path.child(i))

const thinned = <P extends Point>(ring: Ring<P>): Ring<P> =>
  ring.length > CLIP_VERTEX_LIMIT ? simplifyRing(ring, CLIP_SIMPLIFY_MM) : ring
