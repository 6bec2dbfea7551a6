import {
  isPointInRegion,
  type Point,
  pointDistanceMm,
  pointToSegmentDistanceMm,
  type Region,
} from '../../core/geometry'
import type { Handle, PointerKind } from './tools/toolTypes'

/** How near a press must be, screen px. A fingertip covers far more than a cursor's tip. */
export const HIT_RADIUS_PX: Readonly<Record<PointerKind, number>> = {
  mouse: 10,
  touch: 22,
  pen: 12,
  keys: 10,
}

/** A press that moves less than this is a tap, screen px. */
export const TAP_SLOP_PX: Readonly<Record<PointerKind, number>> = { mouse: 4, touch: 10, pen: 6, keys: 0 }

/**
 * The handle nearest to a screen point and within the pointer's reach; among equals the later one, which is drawn on top.
 * @param accepts leaves out handles that the tool does not use
 */
export function hitHandle(
  handles: readonly Handle[],
  at: Point,
  pointer: PointerKind,
  accepts: (handle: Handle) => boolean = () => true,
): Handle | null {
  let nearest: Handle | null = null
  let least = HIT_RADIUS_PX[pointer]
  for (const handle of handles) {
    if (!accepts(handle)) continue
    const distance = pointDistanceMm(handle.screen, at)
    if (distance > least) continue
    nearest = handle
    least = distance
  }
  return nearest
}

/** The point nearest to a screen point and within reach, or null. */
export function hitPoint(points: readonly Point[], at: Point, reachPx: number): number | null {
  let nearest: number | null = null
  let least = reachPx
  points.forEach((point, index) => {
    const distance = pointDistanceMm(point, at)
    if (distance > least) return
    nearest = index
    least = distance
  })
  return nearest
}

/**
 * The edge of a closed screen path nearest to a screen point and within reach.
 * @returns index of the edge's first point: edge i runs from point i to point i + 1 (the last one back to the first)
 */
export function hitEdge(path: readonly Point[], at: Point, reachPx: number): number | null {
  let nearest: number | null = null
  let least = reachPx
  path.forEach((from, index) => {
    const to = path[(index + 1) % path.length]
    if (to === undefined) return
    const distance = pointToSegmentDistanceMm(at, from, to)
    if (distance > least) return
    nearest = index
    least = distance
  })
  return nearest
}

/** Is the point on the wood of one of these regions? */
export const isInRegions = (regions: readonly Region[], at: Point): boolean =>
  regions.some((region) => isPointInRegion(at, region))
