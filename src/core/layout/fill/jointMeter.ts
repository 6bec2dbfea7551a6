import {
  type Bounds,
  isPointInRegion,
  type Point,
  type Region,
  regionBounds,
  segmentCrossing,
} from '../../geometry'

/** Width of a bucket, mm. */
const BUCKET_MM = 40

interface Edge {
  readonly from: Point
  readonly to: Point
}

/** The closest two places of a face and the wood around it. */
export interface NearestWood {
  /** 0 where they touch or overlap; Infinity where nothing lies within reach. */
  readonly distanceMm: number
  /** A place of the face, and the nearest place of the other wood. */
  readonly onFace: Point
  readonly onWood: Point
}

/**
 * Exact distances from a face to wood that is kept, edge against edge; only wood within `reachMm` is looked at.
 * Method: the wood's edges lie in square buckets, so that an edge meets only those near it.
 */
export class JointMeter {
  readonly #regions: Region[] = []
  readonly #buckets = new Map<string, Edge[]>()
  readonly #reachMm: number

  /** @param reachMm joints wider than this are not measured */
  constructor(reachMm: number) {
    this.#reachMm = reachMm
  }

  add(region: Region): void {
    this.#regions.push(region)
    for (const edge of edgesOf(region)) {
      for (const key of bucketsOf(boxOf(edge, 0))) {
        const bucket = this.#buckets.get(key)
        if (bucket === undefined) this.#buckets.set(key, [edge])
        else bucket.push(edge)
      }
    }
  }

  /** The nearest wood to a face. */
  nearest(face: Region): NearestWood {
    const start = face.outer[0] ?? [0, 0]
    let best: NearestWood = { distanceMm: Infinity, onFace: start, onWood: start }
    for (const edge of edgesOf(face)) {
      const reachMm = Math.min(this.#reachMm, best.distanceMm)
      const seen = new Set<Edge>()
      for (const key of bucketsOf(boxOf(edge, reachMm))) {
        for (const other of this.#buckets.get(key) ?? []) {
          if (seen.has(other)) continue
          seen.add(other)
          best = nearer(best, edge, other)
        }
      }
    }
    return best.distanceMm === 0 || !this.#isSwallowed(face) ? best : { ...best, distanceMm: 0 }
  }

  /** Without crossing edges one face lies within the other or outside it: one point of each tells. */
  #isSwallowed(face: Region): boolean {
    const [point] = face.outer
    const box = regionBounds(face)
    return this.#regions.some((region) => {
      const [other] = region.outer
      if (!boxesTouch(box, regionBounds(region))) return false
      return (
        (point !== undefined && isPointInRegion(point, region)) ||
        (other !== undefined && isPointInRegion(other, face))
      )
    })
  }
}

function edgesOf({ outer, holes }: Region): readonly Edge[] {
  return [outer, ...holes].flatMap((ring) =>
    ring.map((from, i): Edge => ({ from, to: ring[(i + 1) % ring.length] ?? from })),
  )
}

const boxOf = ({ from, to }: Edge, grownMm: number): Bounds => ({
  minX: Math.min(from[0], to[0]) - grownMm,
  minY: Math.min(from[1], to[1]) - grownMm,
  maxX: Math.max(from[0], to[0]) + grownMm,
  maxY: Math.max(from[1], to[1]) + grownMm,
})

const boxesTouch = (a: Bounds, b: Bounds): boolean =>
  a.minX <= b.maxX && b.minX <= a.maxX && a.minY <= b.maxY && b.minY <= a.maxY

function bucketsOf({ minX, minY, maxX, maxY }: Bounds): readonly string[] {
  const keys: string[] = []
  for (let column = Math.floor(minX / BUCKET_MM); column <= Math.floor(maxX / BUCKET_MM); column += 1) {
    for (let row = Math.floor(minY / BUCKET_MM); row <= Math.floor(maxY / BUCKET_MM); row += 1) {
      keys.push(`${column}/${row}`)
    }
  }
  return keys
}

function nearer(best: NearestWood, face: Edge, wood: Edge): NearestWood {
  const crossing = segmentCrossing(face.from, face.to, wood.from, wood.to)
  if (crossing !== null) return { distanceMm: 0, onFace: crossing, onWood: crossing }
  let found = best
  const offer = (onFace: Point, onWood: Point): void => {
    const distanceMm = Math.hypot(onFace[0] - onWood[0], onFace[1] - onWood[1])
    if (distanceMm < found.distanceMm) found = { distanceMm, onFace, onWood }
  }
  offer(face.from, nearestOn(wood, face.from))
  offer(face.to, nearestOn(wood, face.to))
  offer(nearestOn(face, wood.from), wood.from)
  offer(nearestOn(face, wood.to), wood.to)
  return found
}

function nearestOn({ from, to }: Edge, [x, y]: Point): Point {
  const dx = to[0] - from[0]
  const dy = to[1] - from[1]
  const lengthSq = dx * dx + dy * dy
  const share = lengthSq > 0 ? ((x - from[0]) * dx + (y - from[1]) * dy) / lengthSq : 0
  const along = Math.min(1, Math.max(0, share))
  return [from[0] + along * dx, from[1] + along * dy]
}
