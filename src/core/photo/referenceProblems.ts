import { type ScaleInput, type ScaleProblem, scaleProblem } from './scaleInput'
import { goesRound, type ScaleNetwork, unusedDistances } from './scaleNetwork'
import type { SlabScale } from './scaleOfPhoto'
import { FOCAL_RANGE_35MM } from './initialCamera'

/** Below this span of the marks a click of one pixel is 2 % of the scale. */
const LEAST_SPAN_PX = 50
/** Shares of the picture's diagonal: below it a reference is small; beyond it the slab lies mostly outside. */
const SMALL_SPAN_SHARE = 0.15
const STEEP_TILT_RAD = (68 * Math.PI) / 180
/** The slab reaches this many times as far from the marks' middle as the farthest mark. */
const ONE_SIDED = 2

/** What can be said of the references before anything is solved. */
export function referenceProblems(input: ScaleInput, network: ScaleNetwork): readonly ScaleProblem[] {
  const problems: ScaleProblem[] = []
  if (input.tapedDistances.length === 0 && input.boards.length === 0) {
    return [scaleProblem('reference-missing', 'blocker')]
  }
  for (const board of input.boards) {
    const corners = board.cornerIds.map((id) => network.marks.find((m) => m.id === id)?.px)
    const seen = corners.flatMap((c) => (c ? [c] : []))
    const at = { values: { boardId: board.id }, markIds: board.cornerIds }
    if (seen.length > 0 && seen.length < 4)
      problems.push(scaleProblem('board-corners-not-seen', 'warning', at))
    else if (seen.length === 4 && !goesRound(seen))
      problems.push(scaleProblem('reference-crossed', 'blocker', at))
  }
  const unused = unusedDistances(input, network)
  if (unused.length > 0) {
    problems.push(scaleProblem('reference-not-used', 'note', { distanceIds: unused.map((d) => d.id) }))
  }
  return [...problems, ...spanProblems(input, network)]
}

function spanProblems(input: ScaleInput, network: ScaleNetwork): readonly ScaleProblem[] {
  const tied = new Set(network.lengths.flatMap((l) => [l.a, l.b]))
  const px = network.marks.filter((_, i) => tied.has(i)).map((m) => m.px)
  if (px.length < 2)
    return [scaleProblem('reference-too-few-marks', 'blocker', { values: { count: px.length } })]
  let spanPx = 0
  for (const p of px) for (const q of px) spanPx = Math.max(spanPx, Math.hypot(p[0] - q[0], p[1] - q[1]))
  const share = spanPx / Math.hypot(input.imageWidthPx, input.imageHeightPx)
  const values = { spanPx, share }
  if (spanPx < LEAST_SPAN_PX) return [scaleProblem('reference-too-small', 'blocker', { values })]
  return share < SMALL_SPAN_SHARE ? [scaleProblem('reference-small', 'warning', { values })] : []
}

/** What can be said once the camera is known. */
export function viewProblems(input: ScaleInput, scale: SlabScale): readonly ScaleProblem[] {
  const problems: ScaleProblem[] = []
  if (scale.tiltRad > STEEP_TILT_RAD) {
    problems.push(scaleProblem('tilt-too-steep', 'warning', { values: { tiltRad: scale.tiltRad } }))
  }
  const focal = scale.focalLength35mm
  if (focal < FOCAL_RANGE_35MM.least || focal > FOCAL_RANGE_35MM.most) {
    problems.push(scaleProblem('focal-unlikely', 'warning', { values: { focalLength35mm: focal } }))
  }
  const reach = reachPastMarks(input)
  if (reach > ONE_SIDED)
    problems.push(scaleProblem('reference-to-one-side', 'warning', { values: { reach } }))
  if (isClipped(input)) problems.push(scaleProblem('slab-clipped', 'warning'))
  return problems
}

/** True when the slab's outline reaches the picture's border (within 3 px). */
const isClipped = ({ slabSpanPx, imageWidthPx, imageHeightPx }: ScaleInput): boolean =>
  (slabSpanPx ?? []).some(([x, y]) => x < 3 || y < 3 || x > imageWidthPx - 3 || y > imageHeightPx - 3)

/** How many times farther the slab reaches from the marks' middle than the farthest mark, in the photo. */
function reachPastMarks(input: ScaleInput): number {
  const px = input.observations.map((o) => o.atPx)
  const middle = [0, 1].map((c) => px.reduce((sum, p) => sum + (p[c] ?? 0), 0) / px.length)
  const farthest = (points: readonly (readonly [number, number])[]): number =>
    Math.max(0, ...points.map((p) => Math.hypot(p[0] - (middle[0] ?? 0), p[1] - (middle[1] ?? 0))))
  const marks = farthest(px)
  return marks > 0 ? farthest(input.slabSpanPx ?? []) / marks : 0
}
