import type { Point } from '../geometry'
import { type Camera, planePointFromPx, pxFromPlanePoint, surfaceHeightMm } from './camera'
import { levenbergMarquardt } from './levenbergMarquardt'
import { entryOf, gramMatrix, inverseOfPositive } from './matrix'
import { rotationFromVector, rotationTimes } from './rotation'

/**
 * θ of one photo: what the camera, its lens and the face out of flat may still do around an answer.
 * Turns about the plane frame's x and y (rad), log of height and focal length, centre (px), k1, k2, bow and twist (mm).
 */
export const CAMERA_PARAMETERS = [
  'turnX',
  'turnY',
  'logHeight',
  'logFocal',
  'centreX',
  'centreY',
  'k1',
  'k2',
  'bow',
  'twist',
] as const
export const CAMERA_PARAMETER_COUNT = CAMERA_PARAMETERS.length
/** Steps for differences, one for each of θ: about a hundredth of a pixel or less in the photo. */
export const CAMERA_STEPS: readonly number[] = [1e-6, 1e-6, 1e-6, 1e-6, 1e-2, 1e-2, 1e-5, 1e-5, 1e-2, 1e-2]

export interface AdjustedMark {
  readonly start: Point
  readonly heightMm: number
}

export interface StraightLine {
  readonly points: readonly Point[]
  readonly sdPx: number
  readonly heightMm: number
}

export interface AdjustmentInput {
  readonly camera: Camera
  readonly marks: readonly AdjustedMark[]
  readonly sightings: readonly { readonly mark: number; readonly px: Point; readonly sdPx: number }[]
  readonly lengths: readonly {
    readonly a: number
    readonly b: number
    readonly lengthMm: number
    readonly sdMm: number
  }[]
  /** Straight lines on the face: points along each. */
  readonly lines: readonly StraightLine[]
  /** Mean and standard deviation of each of θ; an infinite deviation leaves it free. */
  readonly priors: readonly { readonly mean: number; readonly sd: number }[]
  /** Fewer are enough to tell one start from another. */
  readonly mostIterations?: number
}

export interface Adjustment {
  readonly camera: Camera
  readonly marks: readonly Point[]
  /** Σ of θ, 10 × 10, row by row; turns are about the answer. Null when something is left free. */
  readonly covariance: readonly number[] | null
  /** Σ (residual / sd)², priors included. */
  readonly cost: number
  /** Observations and priors less unknowns. */
  readonly redundancy: number
  readonly converged: boolean
}

/** The camera with θ set; turns are taken from the given camera's own attitude. */
export function cameraWith(camera: Camera, theta: readonly number[]): Camera {
  const [turnX = 0, turnY = 0, logHeight = 0, logFocal = 0, ...rest] = theta
  return {
    rotation: rotationTimes(camera.rotation, rotationFromVector(turnX, turnY, 0)),
    heightMm: Math.exp(logHeight),
    ...lensAndSurface(camera, Math.exp(logFocal), rest),
  }
}

function lensAndSurface(
  camera: Camera,
  focalPx: number,
  theta: readonly number[],
): Pick<Camera, 'lens' | 'surface'> {
  const [centreX = 0, centreY = 0, k1 = 0, k2 = 0, bowMm = 0, twistMm = 0] = theta
  return {
    lens: { focalPx, centrePx: [centreX, centreY], k1, k2 },
    surface: { ...camera.surface, bowMm, twistMm },
  }
}

export const thetaOf = ({ heightMm, lens, surface }: Camera): readonly number[] => [
  0,
  0,
  Math.log(heightMm),
  Math.log(lens.focalPx),
  lens.centrePx[0],
  lens.centrePx[1],
  lens.k1,
  lens.k2,
  surface.bowMm,
  surface.twistMm,
]

/**
 * Camera, lens, face and marks together by least squares over everything that was said and seen.
 * @param input sightings of marks (px), lengths between them (mm), straight lines, priors, and a start
 * Method: bundle adjustment of one photo: Levenberg–Marquardt on reprojection (px), length (mm) and straightness (px)
 * residuals, each over its standard deviation, with Gaussian priors (Triggs et al., Bundle Adjustment: A Modern
 * Synthesis, 2000, from memory); Σ is the inverse of the normal matrix, marks eliminated. Rules: PHO-7, PHO-8.
 */
export function adjust(input: AdjustmentInput): Adjustment {
  const lineScales = input.lines.map((line) => acrossMmPerPx(input.camera, line))
  const residualsAt = (parameters: readonly number[]): number[] => residualsOf(input, lineScales, parameters)
  const start = [...thetaOf(input.camera), ...input.marks.flatMap((m) => m.start)]
  const answer = levenbergMarquardt({
    start,
    steps: start.map((_, i) => CAMERA_STEPS[i] ?? 1e-2),
    residuals: residualsAt,
    ...(input.mostIterations === undefined ? {} : { mostIterations: input.mostIterations }),
  })
  const inverse = inverseOfPositive(gramMatrix(answer.jacobian))
  const count = CAMERA_PARAMETER_COUNT
  const covariance = inverse
    ? Array.from({ length: count * count }, (_, n) => entryOf(inverse, Math.floor(n / count), n % count))
    : null
  return {
    camera: cameraWith(input.camera, answer.parameters),
    marks: input.marks.map((_, i) => markAt(answer.parameters, i)),
    covariance,
    cost: answer.cost,
    redundancy: answer.residuals.length - start.length - 2 * input.lines.length,
    converged: answer.converged,
  }
}

const markAt = (parameters: readonly number[], mark: number): Point => [
  parameters[CAMERA_PARAMETER_COUNT + 2 * mark] ?? 0,
  parameters[CAMERA_PARAMETER_COUNT + 2 * mark + 1] ?? 0,
]

function residualsOf(
  input: AdjustmentInput,
  lineScales: readonly (readonly number[])[],
  parameters: readonly number[],
): number[] {
  const camera = cameraWith(input.camera, parameters)
  const residuals: number[] = []
  for (const s of input.sightings) {
    const seen = pxFromPlanePoint(camera, markAt(parameters, s.mark), input.marks[s.mark]?.heightMm ?? 0)
    residuals.push((seen[0] - s.px[0]) / s.sdPx, (seen[1] - s.px[1]) / s.sdPx)
  }
  for (const l of input.lengths) {
    const solved = spatialDistanceMm(camera, input, parameters, l.a, l.b)
    residuals.push((solved - l.lengthMm) / l.sdMm)
  }
  input.lines.forEach((line, i) => {
    residuals.push(...straightness(camera, line, lineScales[i] ?? []))
  })
  input.priors.forEach((prior, i) => {
    if (Number.isFinite(prior.sd)) residuals.push(((parameters[i] ?? 0) - prior.mean) / prior.sd)
  })
  return residuals
}

function spatialDistanceMm(
  camera: Camera,
  input: AdjustmentInput,
  parameters: readonly number[],
  a: number,
  b: number,
): number {
  const p = markAt(parameters, a)
  const q = markAt(parameters, b)
  const rise =
    surfaceHeightMm(camera.surface, p[0], p[1]) +
    (input.marks[a]?.heightMm ?? 0) -
    surfaceHeightMm(camera.surface, q[0], q[1]) -
    (input.marks[b]?.heightMm ?? 0)
  return Math.hypot(p[0] - q[0], p[1] - q[1], rise)
}

/** How far one pixel of click error moves each point of a line across it, mm. */
function acrossMmPerPx(camera: Camera, { points, heightMm }: StraightLine): readonly number[] {
  const place = (px: Point): Point => planePointFromPx(camera, px, heightMm)
  const first = place(points[0] ?? [0, 0])
  const last = place(points.at(-1) ?? [1, 0])
  const length = Math.hypot(last[0] - first[0], last[1] - first[1])
  const normal: Point = [-(last[1] - first[1]) / length, (last[0] - first[0]) / length]
  return points.map((px) => {
    const at = place(px)
    const right = place([px[0] + 1, px[1]])
    const below = place([px[0], px[1] + 1])
    const across = (p: Point): number => (p[0] - at[0]) * normal[0] + (p[1] - at[1]) * normal[1]
    return Math.hypot(across(right), across(below))
  })
}

/**
 * Distances in the photo of a line's points from the picture of the straight line fitted through them on the face,
 * over their deviation. Counted in pixels: counted in mm, a flatter view would pass for a better one.
 */
function straightness(camera: Camera, line: StraightLine, mmPerPx: readonly number[]): readonly number[] {
  const onFace = line.points.map((p) => planePointFromPx(camera, p, line.heightMm))
  const fitted = lineThrough(onFace, mmPerPx)
  return line.points.map((px, i) => {
    const foot = fitted.footOf(onFace[i] ?? [0, 0])
    const seen = pxFromPlanePoint(camera, foot, line.heightMm)
    const next = pxFromPlanePoint(
      camera,
      [foot[0] + fitted.along[0], foot[1] + fitted.along[1]],
      line.heightMm,
    )
    const [dx, dy] = [next[0] - seen[0], next[1] - seen[1]]
    return ((px[1] - seen[1]) * dx - (px[0] - seen[0]) * dy) / (Math.hypot(dx, dy) * line.sdPx)
  })
}

interface PlaneLine {
  /** Unit vector. */
  readonly along: Point
  readonly footOf: (p: Point) => Point
}

/** Weighted least squares on the face: each point counts by how fine the photo is there. */
function lineThrough(points: readonly Point[], mmPerPx: readonly number[]): PlaneLine {
  const first = points[0] ?? [0, 0]
  const last = points.at(-1) ?? [1, 0]
  const length = Math.hypot(last[0] - first[0], last[1] - first[1])
  const [ux, uy] = [(last[0] - first[0]) / length, (last[1] - first[1]) / length]
  const inFrame = ([x, y]: Point): Point => [
    ((x - first[0]) * ux + (y - first[1]) * uy) / length - 0.5,
    (y - first[1]) * ux - (x - first[0]) * uy,
  ]
  let [w0, w1, w2, d0, d1] = [0, 0, 0, 0, 0]
  points.forEach((p, i) => {
    const [s, across] = inFrame(p)
    const w = 1 / (mmPerPx[i] ?? 1) ** 2
    w0 += w
    w1 += w * s
    w2 += w * s * s
    d0 += w * across
    d1 += w * across * s
  })
  const determinant = w0 * w2 - w1 * w1
  const level = (d0 * w2 - d1 * w1) / determinant
  const slope = (d1 * w0 - d0 * w1) / determinant
  const run = Math.hypot(length, slope)
  return {
    along: [(ux * length - uy * slope) / run, (uy * length + ux * slope) / run],
    footOf: (p) => {
      const [s] = inFrame(p)
      const [along, across] = [(s + 0.5) * length, level + slope * s]
      return [first[0] + along * ux - across * uy, first[1] + along * uy + across * ux]
    },
  }
}
