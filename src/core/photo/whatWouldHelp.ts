import type { PxPoint } from '../geometry'
import { CAMERA_PARAMETER_COUNT, CAMERA_PARAMETERS } from './adjustment'
import { type Camera, planePointFromPx } from './camera'
import { type Matrix, matrixTimes, quadraticForm, zeroMatrix } from './matrix'
import type { ScaleInput } from './scaleInput'
import { DEFAULT_CLICK_SD_PX, DEFAULT_TAPE_SD_MM } from './scaleNetwork'
import type { SlabScale } from './scaleOfPhoto'
import { measuredLengthMm, type ThetaGradient, thetaGradient } from './uncertainty'

/** Something more that the maker could measure, and what it would do to the slab's long lengths. */
export interface Help {
  readonly advice:
    | { readonly kind: 'tape-distance'; readonly markIds: readonly [string, string] }
    | { readonly kind: 'straight-line' }
    | { readonly kind: 'read-flatness' }
  /** Standard deviation of lengths across the slab now and after, root mean square, mm. */
  readonly sdNowMm: number
  readonly sdThenMm: number
}

/** A good chalk line brings the lens term to this; a straightedge and winding sticks the bend to this. */
const LINE_SD_K1 = 0.005
const READING_SD_MM = 1
/** What helps by less than this share is not worth the walk to the slab. */
const WORTH_SAYING = 0.05

/**
 * What would make the photo's lengths surer, most helpful first.
 * @param probesPx points that span the slab (its outline, or its ends): the lengths between them are judged
 * @returns advice worth following; empty when nothing on offer helps by a twentieth
 * Method: each offer as one more observation of θ (Kalman's update of Σ), its effect on the lengths' variances.
 * Rules: PHO-18.
 */
export function whatWouldHelp(
  input: ScaleInput,
  scale: SlabScale,
  probesPx: readonly PxPoint[],
): readonly Help[] {
  const gradients = probeGradients(scale.camera, probesPx)
  const now = matrixOf(scale.covariance)
  const sdNowMm = rmsSd(now, gradients)
  const offers = [...tapeOffers(input, scale), ...lineOffer(input), ...flatnessOffer(input)]
  return offers
    .map(({ advice, observations }) => {
      const then = observations.reduce((sigma, o) => updated(sigma, o.gradient, o.variance), now)
      return { advice, sdNowMm, sdThenMm: rmsSd(then, gradients) }
    })
    .filter((help) => help.sdThenMm < (1 - WORTH_SAYING) * sdNowMm)
    .sort((p, q) => p.sdThenMm - q.sdThenMm)
}

interface Offer {
  readonly advice: Help['advice']
  readonly observations: readonly { readonly gradient: ThetaGradient; readonly variance: number }[]
}

const planeDistance = (camera: Camera, p: PxPoint, q: PxPoint): number => {
  const [a, b] = [planePointFromPx(camera, p), planePointFromPx(camera, q)]
  return Math.hypot(a[0] - b[0], a[1] - b[1])
}

function probeGradients(camera: Camera, probesPx: readonly PxPoint[]): readonly ThetaGradient[] {
  return probesPx.flatMap((p, i) =>
    probesPx.slice(i + 1).map((q) => thetaGradient(camera, (c) => planeDistance(c, p, q))),
  )
}

/** Every pair of marks that the photo shows and no tape has joined. */
function tapeOffers(input: ScaleInput, scale: SlabScale): readonly Offer[] {
  const joined = new Set(input.tapedDistances.map((d) => [...d.markIds].sort().join(' ')))
  for (const { cornerIds } of input.boards) {
    for (const a of cornerIds) for (const b of cornerIds) joined.add([a, b].sort().join(' '))
  }
  const tapeVariance = (input.tapeSdMm ?? DEFAULT_TAPE_SD_MM) ** 2
  return input.observations.flatMap((p, i) =>
    input.observations.slice(i + 1).flatMap((q): Offer[] => {
      if (joined.has([p.markId, q.markId].sort().join(' '))) return []
      const clickSdPx = Math.max(p.sdPx ?? 0, q.sdPx ?? 0) || (input.clickSdPx ?? DEFAULT_CLICK_SD_PX)
      const flat = { ...scale, covariance: scale.covariance.map(() => 0) }
      const clicks = measuredLengthMm(flat, p.atPx, q.atPx, clickSdPx).sd ** 2
      const gradient = thetaGradient(scale.camera, (c) => planeDistance(c, p.atPx, q.atPx))
      return [
        {
          advice: { kind: 'tape-distance', markIds: [p.markId, q.markId] },
          observations: [{ gradient, variance: tapeVariance + clicks }],
        },
      ]
    }),
  )
}

const oneOf = (name: (typeof CAMERA_PARAMETERS)[number]): ThetaGradient =>
  CAMERA_PARAMETERS.map((parameter) => (parameter === name ? 1 : 0))

const lineOffer = (input: ScaleInput): readonly Offer[] =>
  (input.straightLines ?? []).length > 0
    ? []
    : [
        {
          advice: { kind: 'straight-line' },
          observations: [{ gradient: oneOf('k1'), variance: LINE_SD_K1 ** 2 }],
        },
      ]

const flatnessOffer = (input: ScaleInput): readonly Offer[] =>
  input.flatness?.kind === 'read'
    ? []
    : [
        {
          advice: { kind: 'read-flatness' },
          observations: [
            { gradient: oneOf('bow'), variance: READING_SD_MM ** 2 },
            { gradient: oneOf('twist'), variance: READING_SD_MM ** 2 },
          ],
        },
      ]

const matrixOf = (values: readonly number[]): Matrix => ({
  rows: CAMERA_PARAMETER_COUNT,
  cols: CAMERA_PARAMETER_COUNT,
  values: Float64Array.from(values),
})

const rmsSd = (sigma: Matrix, gradients: readonly ThetaGradient[]): number =>
  Math.sqrt(gradients.reduce((sum, g) => sum + quadraticForm(sigma, g), 0) / Math.max(1, gradients.length))

/** Σ after one more observation: Σ − Σg gᵀΣ / (gᵀΣg + variance). */
function updated(sigma: Matrix, gradient: ThetaGradient, variance: number): Matrix {
  const reach = matrixTimes(sigma, gradient)
  const total = quadraticForm(sigma, gradient) + variance
  const next = zeroMatrix(sigma.rows, sigma.cols)
  next.values.set(
    sigma.values.map((value, n) => {
      const [row, col] = [Math.floor(n / sigma.cols), n % sigma.cols]
      return value - ((reach[row] ?? 0) * (reach[col] ?? 0)) / total
    }),
  )
  return next
}
