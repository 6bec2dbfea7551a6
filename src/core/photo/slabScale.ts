import type { Point, PxPoint } from '../geometry'
import { adjust, type Adjustment } from './adjustment'
import { homographyOfCamera, planePointFromPx, pxFromPlanePoint } from './camera'
import { invertHomography } from './homography'
import { focal35mmFromPx } from './initialCamera'
import { disagreeingDistances } from './misreadDistance'
import { referenceProblems, viewProblems } from './referenceProblems'
import { type ScaleInput, type ScaleProblem, scaleProblem } from './scaleInput'
import { DEFAULT_CLICK_SD_PX, type ScaleNetwork, scaleNetwork } from './scaleNetwork'
import { scalePriors } from './scalePriors'
import type { SlabScale } from './scaleOfPhoto'
import { startingSurface } from './startingSurface'
import { startingView } from './startingView'
import type { StartingView } from './viewStart'

export interface SlabScaleResult {
  /** Null when a blocker is among the problems. */
  readonly scale: SlabScale | null
  readonly problems: readonly ScaleProblem[]
}

/**
 * True scale of a photo from the marks, boards, taped distances and lines that the maker gave.
 * @param input what was said and seen; heights correct for references that stand above the face
 * @returns the scale, and everything there is to say about it; never throws on a maker's data
 * Method: marks placed from distances, homography by DLT, camera from the homography, then one adjustment of
 * everything (`adjust`). Rules: PHO-4, PHO-6, PHO-7, PHO-9, PHO-10.
 */
export function slabScaleFromMarks(input: ScaleInput): SlabScaleResult {
  const network = scaleNetwork(input)
  const refusals = referenceProblems(input, network)
  if (refusals.some((p) => p.severity === 'blocker')) return { scale: null, problems: refusals }
  const start = startingView(input, network)
  if (!start.ok) return { scale: null, problems: [...refusals, start.problem] }
  const adjustment = adjustTwice(input, network, start.value)
  if (adjustment === null) {
    return { scale: null, problems: [...refusals, scaleProblem('reference-unsolvable', 'blocker')] }
  }
  const scale = scaleOf(input, network, adjustment)
  const disagreeing = disagreeingDistances(network, adjustment.cost, adjustment.redundancy, (without) => {
    const view = startingView(input, { ...network, lengths: without })
    return view.ok ? adjustNetwork(input, { ...network, lengths: without }, view.value) : null
  })
  return {
    scale,
    problems: [...refusals, ...start.value.problems, ...disagreeing, ...viewProblems(input, scale)],
  }
}

/** Where the face is known to be bent, its middle and direction are read off the photo again once the camera stands. */
function adjustTwice(input: ScaleInput, network: ScaleNetwork, start: StartingView): Adjustment | null {
  const first = adjustNetwork(input, network, start)
  if (first === null || input.flatness?.kind !== 'read' || start.tiltPriors !== null) return first
  if (input.flatness.bowMm === 0 && input.flatness.twistMm === 0) return first
  const { bowMm, twistMm } = first.camera.surface
  const surface = { ...startingSurface(input, network, first.camera), bowMm, twistMm }
  return adjustNetwork(input, network, { ...start, camera: { ...first.camera, surface }, marks: first.marks })
}

/**
 * Where the references do not tell the tilt, a line must not either: a slab that is a little uneven makes it wave by
 * about so much, and the waves would pass for a tilt.
 */
const LINE_SD_TILT_ASSUMED_PX = 1.5

/** The adjustment of everything known about one photo, from a starting view. */
function adjustNetwork(input: ScaleInput, network: ScaleNetwork, start: StartingView): Adjustment | null {
  const adjustment = adjust({
    camera: start.camera,
    marks: network.marks.map((m, i) => ({ start: start.marks[i] ?? [0, 0], heightMm: m.heightMm })),
    sightings: network.marks.map((m, i) => ({ mark: i, px: m.px, sdPx: m.sdPx })),
    lengths: network.lengths,
    lines: (input.straightLines ?? [])
      .filter((line) => line.pointsPx.length >= 3)
      .map((line) => ({
        points: line.pointsPx,
        sdPx: Math.hypot(
          line.sdPx ?? input.clickSdPx ?? DEFAULT_CLICK_SD_PX,
          start.tiltPriors === null ? 0 : LINE_SD_TILT_ASSUMED_PX,
        ),
        heightMm: line.heightMm ?? 0,
      })),
    priors: scalePriors(input, start.tiltPriors),
  })
  const finite = [...adjustment.marks.flat(), adjustment.camera.heightMm, adjustment.cost].every(
    Number.isFinite,
  )
  return finite && adjustment.covariance !== null ? adjustment : null
}

function scaleOf(input: ScaleInput, network: ScaleNetwork, adjustment: Adjustment): SlabScale {
  const { camera } = adjustment
  const inverse = homographyOfCamera(camera)
  const size = { widthPx: input.imageWidthPx, heightPx: input.imageHeightPx }
  return {
    camera,
    homography: invertHomography(inverse),
    inverse,
    covariance: adjustment.covariance ?? [],
    imageWidthPx: input.imageWidthPx,
    imageHeightPx: input.imageHeightPx,
    markPositions: network.marks.map((m, i) => ({ markId: m.id, at: adjustment.marks[i] ?? [0, 0] })),
    distanceResiduals: network.lengths.flatMap((l) => {
      if (l.distanceId === null) return []
      const p = adjustment.marks[l.a] ?? [0, 0]
      const q = adjustment.marks[l.b] ?? [0, 0]
      const rise = (network.marks[l.a]?.heightMm ?? 0) - (network.marks[l.b]?.heightMm ?? 0)
      const residualMm = l.lengthMm - Math.hypot(p[0] - q[0], p[1] - q[1], rise)
      return [{ distanceId: l.distanceId, residualMm }]
    }),
    observationResiduals: network.marks.map((m, i) => {
      const seen = pxFromPlanePoint(camera, adjustment.marks[i] ?? [0, 0], m.heightMm)
      return { markId: m.id, residualPx: Math.hypot(seen[0] - m.px[0], seen[1] - m.px[1]) }
    }),
    cameraHeightMm: camera.heightMm,
    tiltRad: Math.acos(Math.min(1, Math.max(-1, camera.rotation[8]))),
    focalLength35mm: focal35mmFromPx(camera.lens.focalPx, size),
    redundancy: adjustment.redundancy,
  }
}

/** Plane frame point (mm) that a pixel of the photo shows, on the slab's face. */
export const planePointOf = (scale: SlabScale, px: PxPoint): Point => planePointFromPx(scale.camera, px)
