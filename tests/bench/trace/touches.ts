import { pxPoint } from '../../../src/core/geometry'
import type { Stroke } from '../../../src/core/trace'

type Pair = readonly [number, number]

/** Even-odd fill of a ring, by pixel centres of a raster whose pixels are `factor` photo pixels wide. */
export function fillRing(
  ring: readonly Pair[],
  widthPx: number,
  heightPx: number,
  factor: number,
): Uint8Array {
  const inside = new Uint8Array(widthPx * heightPx)
  const crossings: number[][] = Array.from({ length: heightPx }, () => [])
  for (const [n, [ax, ay]] of ring.entries()) {
    const [bx, by] = ring[(n + 1) % ring.length] ?? [0, 0]
    if (ay === by) continue
    const [x0, y0, x1, y1] = ay < by ? [ax, ay, bx, by] : [bx, by, ax, ay]
    const from = Math.max(0, Math.ceil(y0 / factor - 0.5))
    const to = Math.min(heightPx - 1, Math.ceil(y1 / factor - 0.5) - 1)
    for (let row = from; row <= to; row++) {
      const y = (row + 0.5) * factor
      crossings[row]?.push((x0 + ((x1 - x0) * (y - y0)) / (y1 - y0)) / factor)
    }
  }
  for (const [row, list] of crossings.entries()) {
    list.sort((a, b) => a - b)
    for (let n = 0; n + 1 < list.length; n += 2) {
      const from = Math.max(0, Math.ceil((list[n] ?? 0) - 0.5))
      const to = Math.min(widthPx - 1, Math.ceil((list[n + 1] ?? 0) - 0.5) - 1)
      inside.fill(1, row * widthPx + from, row * widthPx + to + 1)
    }
  }
  return inside
}

/** Distance to the nearest pixel outside the set, in pixels (two sweeps, 1 and √2; the frame is outside). */
export function depthInside(inside: Uint8Array, widthPx: number, heightPx: number): Float32Array {
  const depth = new Float32Array(inside.length)
  const at = (x: number, y: number): number =>
    x < 0 || y < 0 || x >= widthPx || y >= heightPx ? 0 : (depth[y * widthPx + x] ?? 0)
  for (let y = 0; y < heightPx; y++) {
    for (let x = 0; x < widthPx; x++) {
      if (inside[y * widthPx + x] === 0) continue
      depth[y * widthPx + x] = Math.min(
        at(x - 1, y) + 1,
        at(x, y - 1) + 1,
        at(x - 1, y - 1) + Math.SQRT2,
        at(x + 1, y - 1) + Math.SQRT2,
      )
    }
  }
  for (let y = heightPx - 1; y >= 0; y--) {
    for (let x = widthPx - 1; x >= 0; x--) {
      const n = y * widthPx + x
      if (inside[n] === 0) continue
      depth[n] = Math.min(
        depth[n] ?? 0,
        at(x + 1, y) + 1,
        at(x, y + 1) + 1,
        at(x + 1, y + 1) + Math.SQRT2,
        at(x - 1, y + 1) + Math.SQRT2,
      )
    }
  }
  return depth
}

function largestPart(inside: Uint8Array, widthPx: number): Uint8Array {
  const label = new Int32Array(inside.length)
  let best = 0
  let most = 0
  let next = 0
  const stack: number[] = []
  for (let start = 0; start < inside.length; start++) {
    if (inside[start] === 0 || label[start] !== 0) continue
    next++
    label[start] = next
    stack.push(start)
    let size = 0
    while (stack.length > 0) {
      const n = stack.pop() ?? 0
      size++
      const x = n % widthPx
      for (const m of [x > 0 ? n - 1 : -1, x < widthPx - 1 ? n + 1 : -1, n - widthPx, n + widthPx]) {
        if (m < 0 || m >= inside.length || inside[m] === 0 || label[m] !== 0) continue
        label[m] = next
        stack.push(m)
      }
    }
    if (size > most) {
      most = size
      best = next
    }
  }
  return inside.map((_, n) => (best !== 0 && label[n] === best ? 1 : 0))
}

const DIRECTIONS = 36

/** The longest straight stroke through a place that stays in the set, each half at most `mostPx / 2`. */
function longestStroke(
  inside: Uint8Array,
  widthPx: number,
  x: number,
  y: number,
  mostPx: number,
): readonly [Pair, Pair] {
  let best: readonly [Pair, Pair] = [
    [x, y],
    [x, y],
  ]
  let longest = 0
  for (let k = 0; k < DIRECTIONS; k++) {
    const dx = Math.cos((k * Math.PI) / DIRECTIONS)
    const dy = Math.sin((k * Math.PI) / DIRECTIONS)
    const reach = (sign: number): number => {
      let length = 0
      while (length + 1 <= mostPx / 2) {
        const i = Math.floor(x + sign * dx * (length + 1))
        const j = Math.floor(y + sign * dy * (length + 1))
        if (i < 0 || i >= widthPx || inside[j * widthPx + i] !== 1) break
        length++
      }
      return length
    }
    const ahead = reach(1)
    const behind = reach(-1)
    if (ahead + behind > longest) {
      longest = ahead + behind
      best = [
        [x - dx * behind, y - dy * behind],
        [x + dx * ahead, y + dy * ahead],
      ]
    }
  }
  return best
}

/**
 * The next touch by the published rule: in the middle of the largest error. The error is what is wrongly in or out, in
 * one piece (by sides), counted in photo pixels; its middle is the place farthest from its rim; the stroke is the
 * longest straight one through the middle that stays within the error.
 * @returns null when nothing is wrong
 */
export function nextTouch(
  real: readonly Pair[],
  traced: readonly Pair[],
  photo: { readonly widthPx: number; readonly heightPx: number },
  isFirst: boolean,
): Stroke | null {
  const factor = 2
  const widthPx = Math.floor(photo.widthPx / factor)
  const heightPx = Math.floor(photo.heightPx / factor)
  const right = fillRing(real, widthPx, heightPx, factor)
  const have = fillRing(traced, widthPx, heightPx, factor)
  const missing = largestPart(
    right.map((v, n) => (v === 1 && have[n] === 0 ? 1 : 0)),
    widthPx,
  )
  const extra = largestPart(
    right.map((v, n) => (v === 0 && have[n] === 1 ? 1 : 0)),
    widthPx,
  )
  const count = (set: Uint8Array): number => set.reduce((sum, v) => sum + v, 0)
  const isMissing = count(missing) >= count(extra)
  const error = isMissing ? missing : extra
  const depth = depthInside(error, widthPx, heightPx)
  let middle = -1
  for (let n = 0; n < depth.length; n++)
    if ((depth[n] ?? 0) > (middle < 0 ? 0 : (depth[middle] ?? 0))) middle = n
  if (middle < 0) return null
  const mostPx = (photo.widthPx * (isFirst ? 0.3 : 0.1)) / factor
  const [from, to] = longestStroke(
    error,
    widthPx,
    (middle % widthPx) + 0.5,
    Math.floor(middle / widthPx) + 0.5,
    mostPx,
  )
  return {
    kind: isMissing ? 'wood' : 'not-wood',
    fromPx: pxPoint(from[0] * factor, from[1] * factor),
    toPx: pxPoint(to[0] * factor, to[1] * factor),
  }
}
