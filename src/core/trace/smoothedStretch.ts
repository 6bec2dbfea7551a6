import { normaliseOutline, pxPoint, type PxPoint, type Ring } from '../geometry'
import { InvariantError, type Result } from '../units'
import { cutShortWay, joinedRing, lineLengthPx } from './ringStretch'

/** Points so far apart, as a share of the bell's spread. */
const STEP_SHARE = 0.5
/** The bell is cut off here, and the smoothing fades in over the same way from either end, in spreads. */
const REACH = 3

/** Points at even steps along an open line, its ends included. */
function evenly(line: readonly PxPoint[], stepPx: number): readonly PxPoint[] {
  const total = lineLengthPx(line)
  const count = Math.max(1, Math.round(total / stepPx))
  const places: PxPoint[] = []
  let before = 0
  for (const [n, [x1, y1]] of line.entries()) {
    const [x0, y0] = line[n - 1] ?? [x1, y1]
    const side = Math.hypot(x1 - x0, y1 - y0)
    while (places.length < count && (places.length * total) / count <= before + side) {
      const share = side === 0 ? 0 : ((places.length * total) / count - before) / side
      places.push(pxPoint(x0 + (x1 - x0) * share, y0 + (y1 - y0) * share))
    }
    before += side
  }
  return [...places, ...line.slice(-1)]
}

/** One pass of the bell along a line; beyond its ends the line is taken to go on as turned about them. */
function belled(line: readonly PxPoint[], spreadSteps: number): readonly PxPoint[] {
  const reach = Math.ceil(REACH * spreadSteps)
  const last = line.length - 1
  const placeAt = (n: number): PxPoint => {
    const inside = Math.min(last, Math.max(0, n))
    const [x, y] = line[inside] ?? pxPoint(0, 0)
    if (inside === n) return pxPoint(x, y)
    const [u, v] = line[Math.min(last, Math.max(0, 2 * inside - n))] ?? pxPoint(x, y)
    return pxPoint(2 * x - u, 2 * y - v)
  }
  return line.map((_, n) => {
    let [x, y, weight] = [0, 0, 0]
    for (let k = -reach; k <= reach; k++) {
      const share = Math.exp(-(k * k) / (2 * spreadSteps * spreadSteps))
      const [u, v] = placeAt(n + k)
      x += share * u
      y += share * v
      weight += share
    }
    return pxPoint(x / weight, y / weight)
  })
}

/**
 * Smooths the shorter way between two places of a ring; its ends stay, and nothing else moves.
 * @param spreadPx spread of the bell that the line is averaged by, > 0: bends shorter than it go, longer ones stay
 * @returns the mended ring, or the problem as in `redrawnStretch`
 * Method: bell-shaped averages taken twice, 2·B − B·B (Tukey's "twicing"): a single one draws every bend inwards.
 * Rules: TRC-12.
 */
export function smoothedStretch(
  ring: Ring<PxPoint>,
  fromPx: PxPoint,
  toPx: PxPoint,
  spreadPx: number,
): Result<Ring<PxPoint>> {
  if (!(spreadPx > 0)) throw new InvariantError('smoothing needs a spread', { spreadPx })
  const { there, back } = cutShortWay(ring, fromPx, toPx)
  const line = evenly(there, STEP_SHARE * spreadPx)
  const once = belled(line, 1 / STEP_SHARE)
  const twice = belled(once, 1 / STEP_SHARE)
  const last = line.length - 1
  const fade = REACH / STEP_SHARE
  const smooth = line.map(([x, y], n) => {
    const share = Math.min(1, n / fade, (last - n) / fade)
    const [x1, y1] = once[n] ?? [x, y]
    const [x2, y2] = twice[n] ?? [x, y]
    return pxPoint(x + share * (2 * x1 - x2 - x), y + share * (2 * y1 - y2 - y))
  })
  return normaliseOutline(joinedRing(smooth, back))
}
