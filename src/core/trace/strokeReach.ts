import { BucketQueue } from './bucketQueue'
import type { Features } from './features'
import type { PixelGraph } from './pixelGraph'

/** A step between two alike pixels costs little more than 1; one over an edge of 33 of 255 about 20. */
const STEP = 1
const EDGE = 0.6
const FALL_OFF = 25
const FARTHEST = 100

/**
 * How strongly the strokes speak for each pixel: 1 on a wood stroke, −1 on another, fading with the way from the
 * stroke, counted along even colour, so that it fills a block or a stretch of bark but does not cross its edges. Yields between
 * the two.
 */
export function* strokeReach(
  features: Features,
  graph: PixelGraph,
  marks: Int8Array,
): Generator<void, Float32Array> {
  const wood = waysFrom(features, graph, marks, 1)
  yield
  const other = waysFrom(features, graph, marks, -1)
  return wood.map((way, at) => Math.exp(-way / FALL_OFF) - Math.exp(-(other[at] ?? 0) / FALL_OFF))
}

/** What a step between two neighbours costs. */
function stepCost({ rows, dimensions }: Features, a: number, b: number): number {
  let contrast = 0
  for (let c = 0; c < 3; c++) {
    contrast += ((rows[a * dimensions + c] ?? 0) - (rows[b * dimensions + c] ?? 0)) ** 2
  }
  return STEP + EDGE * Math.sqrt(contrast)
}

function waysFrom(
  features: Features,
  { neighbours }: PixelGraph,
  marks: Int8Array,
  mark: 1 | -1,
): Float32Array {
  const ways = new Float32Array(marks.length).fill(FARTHEST * 2)
  const queue = new BucketQueue(FARTHEST + 1)
  const reach = (at: number, way: number): void => {
    if (way >= (ways[at] ?? 0) || way >= FARTHEST) return
    ways[at] = way
    queue.put(at, Math.round(way))
  }
  for (let at = 0; at < marks.length; at++) if (marks[at] === mark) reach(at, 0)
  for (let at = queue.take(); at >= 0; at = queue.take()) {
    const way = ways[at] ?? 0
    if (Math.round(way) < queue.priority) continue
    for (let k = 0; k < 4; k++) {
      const next = neighbours[at * 8 + k] ?? -1
      if (next >= 0) reach(next, way + stepCost(features, at, next))
    }
  }
  return ways
}
