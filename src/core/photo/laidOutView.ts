import type { Point } from '../geometry'
import { ok, type Result } from '../units'
import { planePointFromPx } from './camera'
import { type Homography, homographyFromPoints } from './homography'
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
import type { ScaleNetwork } from './scaleNetwork'
import { startingSurface } from './startingSurface'
import type { StartingView } from './viewStart'

/**
 * A first view from a group of at least four marks tied by lengths: the group is laid out, its homography gives the
 * camera, and the other marks are read off the photo.
 */
export function laidOutView(
  input: ScaleInput,
  network: ScaleNetwork,
  group: readonly number[],
): Result<StartingView, ScaleProblem> {
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
  return ok({
    camera: { ...camera, heightMm: camera.heightMm + liftMm },
    marks,
    tiltPriors: null,
    problems: [],
  })
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

function startingFocalPx(input: ScaleInput, planeToPx: Homography): number {
  const size = { widthPx: input.imageWidthPx, heightPx: input.imageHeightPx }
  const exif = input.focalLength35mm ?? null
  if (exif !== null) return focalPxFrom35mm(exif, size)
  const seen = focalFromHomography(planeToPx, size)
  const seen35mm = seen === null ? null : focal35mmFromPx(seen, size)
  const believable =
    seen35mm !== null && seen35mm > FOCAL_RANGE_35MM.least && seen35mm < FOCAL_RANGE_35MM.most
  return seen !== null && believable ? seen : focalPxFrom35mm(USUAL_FOCAL_35MM, size)
}
