import { pxPoint, type PxPoint } from '../geometry'

/** The span is known no finer than this share of the photo's longer side, so that a dragged point seldom changes it. */
const STEP_SHARE = 0.02
/** An outline so near the photo's rim was cut off by it, px. */
const RIM_PX = 3

interface SpanInput {
  readonly ringPx: readonly PxPoint[]
  readonly photo: { readonly widthPx: number; readonly heightPx: number }
  readonly datum: { readonly fromPx: PxPoint; readonly toPx: PxPoint } | null
}

/**
 * How far a slab's outline reaches in its photo, as text (so that equal spans are the same input): the corners of the
 * box round it along the datum, in steps, and the points at which the photo's rim cuts it off.
 * @returns null when nothing is traced
 */
export function spanText({ ringPx, photo, datum }: SpanInput): string | null {
  if (ringPx.length < 3) return null
  const step = STEP_SHARE * Math.max(photo.widthPx, photo.heightPx)
  const [dx, dy] = datum ? [datum.toPx[0] - datum.fromPx[0], datum.toPx[1] - datum.fromPx[1]] : [1, 0]
  const length = Math.hypot(dx, dy) || 1
  const [c, s] = length === 1 && dx === 0 ? [1, 0] : [dx / length, dy / length]
  const along = extent(
    ringPx.map(([x, y]) => x * c + y * s),
    step,
  )
  const across = extent(
    ringPx.map(([x, y]) => y * c - x * s),
    step,
  )
  const corners = [
    [along.least, across.least],
    [along.most, across.least],
    [along.most, across.most],
    [along.least, across.most],
  ].map(([a = 0, b = 0]) => [a * c - b * s, a * s + b * c])
  const cutOff = ringPx.filter(
    ([x, y]) => x < RIM_PX || y < RIM_PX || x > photo.widthPx - RIM_PX || y > photo.heightPx - RIM_PX,
  )
  const inPhoto = corners.map(([x = 0, y = 0]) => [
    Math.min(photo.widthPx - 2 * RIM_PX, Math.max(2 * RIM_PX, x)),
    Math.min(photo.heightPx - 2 * RIM_PX, Math.max(2 * RIM_PX, y)),
  ])
  return JSON.stringify([...inPhoto, ...cutOff])
}

function extent(values: readonly number[], step: number): { readonly least: number; readonly most: number } {
  const rounded = (value: number): number => Math.round(value / step) * step
  const least = values.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY)
  const most = values.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY)
  return { least: rounded(least), most: rounded(most) }
}

/** The points of a span's text. */
export function spanPoints(text: string): readonly PxPoint[] {
  const pairs: unknown = JSON.parse(text)
  if (!Array.isArray(pairs)) return []
  return pairs.flatMap((pair) => (Array.isArray(pair) ? [pxPoint(Number(pair[0]), Number(pair[1]))] : []))
}
