import { pxPoint, ringSelfCrossing, type PxPoint, type Ring } from '../geometry'
import { InvariantError } from '../units'

/** One stroke of a round tool over the photo. */
export interface PushTool {
  readonly fromPx: PxPoint
  readonly toPx: PxPoint
  readonly radiusPx: number
}

/** The tool goes in steps of this share of its radius: a step so short cannot fold the plane (see below). */
const STEP_SHARE = 0.25
/** Under the tool points are no farther apart than this share of the radius, and those nearer than the other are one. */
const FAR_SHARE = 0.1
const NEAR_SHARE = 0.03
const MOST_HALVINGS = 8

/** Adds points under the tool, so that a long straight side bends smoothly. */
function finer(ring: Ring<PxPoint>, [cx, cy]: PxPoint, radiusPx: number): Ring<PxPoint> {
  return ring.flatMap((from, n) => {
    const [x0, y0] = from
    const [x1, y1] = ring[(n + 1) % ring.length] ?? from
    const side = Math.hypot(x1 - x0, y1 - y0)
    const along = ((cx - x0) * (x1 - x0) + (cy - y0) * (y1 - y0)) / (side || 1)
    const middle = Math.min(side, Math.max(0, along)) / (side || 1)
    const isNear = Math.hypot(x0 + (x1 - x0) * middle - cx, y0 + (y1 - y0) * middle - cy) < radiusPx
    if (!isNear || side <= FAR_SHARE * radiusPx) return [from]
    // Only the part under the tool is divided; the sides that lead to it stay straight.
    const count = Math.ceil(side / (FAR_SHARE * radiusPx))
    const points = Array.from({ length: count - 1 }, (_, k) => {
      const share = (k + 1) / count
      return pxPoint(x0 + (x1 - x0) * share, y0 + (y1 - y0) * share)
    })
    const reachPx = radiusPx * (1 + FAR_SHARE)
    return [from, ...points.filter(([x, y]) => Math.hypot(x - cx, y - cy) < reachPx)]
  })
}

function stepped(
  ring: Ring<PxPoint>,
  [cx, cy]: PxPoint,
  dx: number,
  dy: number,
  radiusPx: number,
): Ring<PxPoint> {
  return ring.map((at) => {
    const [x, y] = at
    const distanceSq = ((x - cx) ** 2 + (y - cy) ** 2) / radiusPx ** 2
    if (distanceSq >= 1) return at
    const share = (1 - distanceSq) ** 2
    return pxPoint(x + dx * share, y + dy * share)
  })
}

/** The stroke's first part. */
function pushedBy(ring: Ring<PxPoint>, { fromPx, toPx, radiusPx }: PushTool, part: number): Ring<PxPoint> {
  const lengthX = (toPx[0] - fromPx[0]) * part
  const lengthY = (toPx[1] - fromPx[1]) * part
  const count = Math.max(1, Math.ceil(Math.hypot(lengthX, lengthY) / (STEP_SHARE * radiusPx)))
  let pushed = ring
  for (let n = 0; n < count; n++) {
    const centre = pxPoint(fromPx[0] + (lengthX * n) / count, fromPx[1] + (lengthY * n) / count)
    pushed = stepped(finer(pushed, centre, radiusPx), centre, lengthX / count, lengthY / count, radiusPx)
  }
  return pushed
}

/** Points that the stroke drew together are one, but for those that were there before. */
function gathered(pushed: Ring<PxPoint>, before: ReadonlySet<PxPoint>, radiusPx: number): Ring<PxPoint> {
  let last: PxPoint | null = null
  return pushed.filter((at) => {
    const isNear = last !== null && Math.hypot(at[0] - last[0], at[1] - last[1]) < NEAR_SHARE * radiusPx
    if (isNear && !before.has(at)) return false
    last = at
    return true
  })
}

/**
 * Pushes what lies under a round tool along with it: fully in its middle, not at all at its rim. Points are added under
 * the tool, so that the line stays smooth; points that it does not touch stay as they are.
 * @param ring photo pixels, not crossing itself
 * @returns a ring that does not cross itself, of the same sign: of a stroke that would make it cross, only the first
 *   part is done
 * @throws InvariantError when the radius is not above zero
 * Method: x → x + step · (1 − d²/r²)² for d < r, in steps of at most r/4: its gradient is at most 1.54 · step/r < 1, so
 * that each step maps the plane one to one, and no line is ever laid over another.
 * Rules: TRC-12.
 */
export function pushedRing(ring: Ring<PxPoint>, tool: PushTool): Ring<PxPoint> {
  const { radiusPx } = tool
  if (!(radiusPx > 0)) throw new InvariantError('a tool needs a radius', { radiusPx })
  const before = new Set(ring)
  for (let halving = 0; halving <= MOST_HALVINGS; halving++) {
    const pushed = pushedBy(ring, tool, 0.5 ** halving)
    const light = gathered(pushed, before, radiusPx)
    if (light.length >= 3 && ringSelfCrossing(light) === null) return light
    if (ringSelfCrossing(pushed) === null) return pushed
  }
  return ring
}
