import type { Point } from '../geometry'
import { ok, type Result } from '../units'
import { type Camera, planePointFromPx, type Surface } from './camera'
import { homographyFromPoints } from './homography'
import {
  FOCAL_RANGE_35MM,
  focal35mmFromPx,
  focalFromHomography,
  focalPxFrom35mm,
  initialCamera,
  USUAL_FOCAL_35MM,
} from './initialCamera'
import { markPositionsFromDistances, wrongTriples } from './markLayout'
import { type ScaleInput, type ScaleProblem, scaleProblem } from './scaleInput'
import { type ScaleNetwork, tiedGroups } from './scaleNetwork'

export interface StartingView {
  readonly camera: Camera
  /** In the camera's plane frame, one for each mark of the network. */
  readonly marks: readonly Point[]
}

/**
 * A first camera and first places of all marks: the largest group of at least four marks tied by lengths is laid out,
 * its homography gives the camera, and the other marks are read off the photo.
 */
export function startingView(input: ScaleInput, network: ScaleNetwork): Result<StartingView, ScaleProblem> {
  const group = tiedGroups(network).find((g) => g.length >= 4)
  if (!group) {
    return refused('reference-too-few-marks', { values: { count: network.marks.length } })
  }
  const layout = layOutGroup(network, group)
  if (!layout.ok) return layout
  const pairs = group.map((mark, i) => ({
    from: layout.value[i] ?? ([0, 0] as const),
    to: network.marks[mark]?.px ?? ([0, 0] as const),
  }))
  const markIds = group.map((mark) => network.marks[mark]?.id ?? '')
  const map = homographyFromPoints(pairs)
  if (!map.ok) return refused('reference-collinear', { markIds })
  if (
    wrongTriples(
      pairs.map((p) => p.from),
      pairs.map((p) => p.to),
    ) > 0
  ) {
    return refused('reference-mirrored', { markIds })
  }
  const size = { widthPx: input.imageWidthPx, heightPx: input.imageHeightPx }
  const view = initialCamera(map.value, startingFocalPx(input, map.value), pairs[0]?.from ?? [0, 0], size)
  const camera = { ...view.camera, surface: startingSurface(input, network, view.camera) }
  const marks = network.marks.map((mark, i) => {
    const inGroup = group.indexOf(i)
    const at = layout.value[inGroup]
    return at ? view.toFootFrame(at) : planePointFromPx(camera, mark.px, mark.heightMm)
  })
  // The homography lies at the marks' own height, so the camera stands that much higher over the face.
  const liftMm = group.reduce((sum, mark) => sum + (network.marks[mark]?.heightMm ?? 0), 0) / group.length
  return ok({ camera: { ...camera, heightMm: camera.heightMm + liftMm }, marks })
}

const refused = (
  code: ScaleProblem['code'],
  at: Parameters<typeof scaleProblem>[2],
): { readonly ok: false; readonly problem: ScaleProblem } => ({
  ok: false,
  problem: scaleProblem(code, 'blocker', at),
})

function layOutGroup(
  network: ScaleNetwork,
  group: readonly number[],
): Result<readonly Point[], ScaleProblem> {
  const markAt = (i: number): ScaleNetwork['marks'][number] | undefined => network.marks[i]
  const inGroup = network.lengths.filter((l) => group.includes(l.a) && group.includes(l.b))
  const layout = markPositionsFromDistances({
    markIds: group.map((i) => markAt(i)?.id ?? ''),
    distances: inGroup.map((l, n) => {
      const rise = (markAt(l.a)?.heightMm ?? 0) - (markAt(l.b)?.heightMm ?? 0)
      return {
        id: l.distanceId ?? `side ${String(n)}`,
        a: markAt(l.a)?.id ?? '',
        b: markAt(l.b)?.id ?? '',
        lengthMm: Math.sqrt(Math.max(l.lengthMm ** 2 - rise ** 2, 0)),
      }
    }),
    seedPositions: group.map((i) => ({ id: markAt(i)?.id ?? '', at: markAt(i)?.px ?? [0, 0] })),
  })
  if (layout.ok) return ok(layout.value.positions.map((p) => p.at))
  const { code, values } = layout.problem
  const distanceId = String(values['distanceId'] ?? '')
  const markId = String(values['markId'] ?? '')
  return refused(code, {
    values,
    markIds: markId === '' ? [] : [markId],
    distanceIds: distanceId === '' ? [] : [distanceId],
  })
}

function startingFocalPx(input: ScaleInput, planeToPx: Parameters<typeof focalFromHomography>[0]): number {
  const size = { widthPx: input.imageWidthPx, heightPx: input.imageHeightPx }
  const exif = input.focalLength35mm ?? null
  if (exif !== null) return focalPxFrom35mm(exif, size)
  const seen = focalFromHomography(planeToPx, size)
  const seen35mm = seen === null ? null : focal35mmFromPx(seen, size)
  const believable =
    seen35mm !== null && seen35mm > FOCAL_RANGE_35MM.least && seen35mm < FOCAL_RANGE_35MM.most
  return seen !== null && believable ? seen : focalPxFrom35mm(USUAL_FOCAL_35MM, size)
}

/** The slab's middle, length and width as far as the photo tells: from its outline, or else from the marks. */
export function startingSurface(input: ScaleInput, network: ScaleNetwork, camera: Camera): Surface {
  const span = input.slabSpanPx ?? []
  const seen = span.length >= 3 ? span : network.marks.map((m) => m.px)
  const points = seen.map((px) => planePointFromPx(camera, px)).filter((p) => p.every(Number.isFinite))
  const meanX = points.reduce((sum, p) => sum + p[0], 0) / points.length
  const meanY = points.reduce((sum, p) => sum + p[1], 0) / points.length
  let [xx, xy, yy] = [0, 0, 0]
  for (const [x, y] of points) {
    xx += (x - meanX) ** 2
    xy += (x - meanX) * (y - meanY)
    yy += (y - meanY) ** 2
  }
  const angle = Math.atan2(2 * xy, xx - yy) / 2
  const along: Point = [Math.cos(angle), Math.sin(angle)]
  const s = points.map((p) => (p[0] - meanX) * along[0] + (p[1] - meanY) * along[1])
  const t = points.map((p) => (p[1] - meanY) * along[0] - (p[0] - meanX) * along[1])
  const [sMin, sMax] = [Math.min(...s), Math.max(...s)]
  const [tMin, tMax] = [Math.min(...t), Math.max(...t)]
  const [sMid, tMid] = [(sMin + sMax) / 2, (tMin + tMax) / 2]
  const share = span.length >= 3 ? 1 : MARKS_TO_SLAB
  return {
    centreMm: [meanX + sMid * along[0] - tMid * along[1], meanY + sMid * along[1] + tMid * along[0]],
    along,
    halfLengthMm: Math.max(((sMax - sMin) / 2) * share, 1),
    halfWidthMm: Math.max(((tMax - tMin) / 2) * share, 1),
    bowMm: 0,
    twistMm: 0,
  }
}

/** Marks stand a little inside the slab's ends and edges. */
const MARKS_TO_SLAB = 1.2
