import type { Point, Region } from '../../geometry'

/**
 * Directed edges of some rings as flat rows, for loops that run a hundred thousand times. Wood lies to the right of each
 * edge as seen on screen: outer rings positive, holes negative. Coordinates are relative to an origin near the wood.
 */
export interface EdgeSet {
  readonly count: number
  readonly ax: Float64Array
  readonly ay: Float64Array
  readonly bx: Float64Array
  readonly by: Float64Array
}

/** A number of a row; the index is always within it, which the compiler cannot know. */
export const numberAt = (row: Float64Array, index: number): number => row[index] ?? 0

/**
 * All edges of regions, in the order of their rings.
 * @param regions mm; outer rings positive, holes negative
 * @param origin  taken off every coordinate, so that nothing is lost far from the frame's origin
 */
export function edgesOf(regions: readonly Region[], origin: Point): EdgeSet {
  const rings = regions.flatMap(({ outer, holes }) => [outer, ...holes])
  const edges = emptyEdges(rings.reduce((sum, ring) => sum + ring.length, 0))
  let at = 0
  for (const ring of rings) {
    ring.forEach((a, index) => {
      const b = ring[(index + 1) % ring.length] ?? a
      setEdge(edges, at, a[0] - origin[0], a[1] - origin[1], b[0] - origin[0], b[1] - origin[1])
      at += 1
    })
  }
  return edges
}

/** Room for so many edges. */
export const emptyEdges = (count: number): EdgeSet => ({
  count,
  ax: new Float64Array(count),
  ay: new Float64Array(count),
  bx: new Float64Array(count),
  by: new Float64Array(count),
})

function setEdge(edges: EdgeSet, at: number, ax: number, ay: number, bx: number, by: number): void {
  edges.ax[at] = ax
  edges.ay[at] = ay
  edges.bx[at] = bx
  edges.by[at] = by
}

/** The edges whose numbers are listed in the first `count` places of `kept`. */
export function edgeSubset(edges: EdgeSet, kept: Int32Array, count: number): EdgeSet {
  const subset = emptyEdges(count)
  for (let k = 0; k < count; k += 1) {
    const i = kept[k] ?? 0
    setEdge(
      subset,
      k,
      numberAt(edges.ax, i),
      numberAt(edges.ay, i),
      numberAt(edges.bx, i),
      numberAt(edges.by, i),
    )
  }
  return subset
}
