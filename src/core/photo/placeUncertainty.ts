import { type PxPoint, pxPoint, type SlabPoint } from '../geometry'
import { CAMERA_PARAMETER_COUNT, CAMERA_STEPS, cameraWith, thetaOf } from './adjustment'
import { quadraticForm } from './matrix'
import { slabFrame, type SlabFrame, slabPointFromPx } from './slabFrame'
import type { SlabScale } from './scaleOfPhoto'

export interface MeasuredPlace {
  readonly at: SlabPoint
  /** Standard deviation in the direction in which it is greatest, mm. */
  readonly sdMm: number
}

/**
 * How sure each place of the slab is, in the slab frame: for the map of where the photo is weak.
 * @param datum     the two anchors of the slab frame, px; places near them are sure by definition
 * @param clickSdPx standard deviation of the place itself, px
 * @returns a function from pixels to places, quick enough for a grid; null when the datum carries no frame
 * Method: central differences over θ in the whole chain pixel → slab frame; larger axis of the 2 × 2 covariance.
 * Rules: PHO-15.
 */
export function placeMeasurer(
  scale: SlabScale,
  datum: { readonly fromPx: PxPoint; readonly toPx: PxPoint },
  clickSdPx: number,
): ((px: PxPoint) => MeasuredPlace) | null {
  const frameOf = (camera: SlabScale['camera']): SlabFrame | null => {
    const frame = slabFrame({ ...scale, camera }, datum)
    return frame.ok ? frame.value : null
  }
  const theta = thetaOf(scale.camera)
  const middle = frameOf(scale.camera)
  const pairs = CAMERA_STEPS.flatMap((step, i) => {
    const above = frameOf(cameraWith(scale.camera, theta.with(i, (theta[i] ?? 0) + step)))
    const below = frameOf(cameraWith(scale.camera, theta.with(i, (theta[i] ?? 0) - step)))
    return above && below ? [{ above, below, step }] : []
  })
  if (!middle || pairs.length < CAMERA_PARAMETER_COUNT) return null
  const sigma = {
    rows: CAMERA_PARAMETER_COUNT,
    cols: CAMERA_PARAMETER_COUNT,
    values: Float64Array.from(scale.covariance),
  }
  return (px) => {
    const gradients = pairs.map(({ above, below, step }) => {
      const [p, q] = [slabPointFromPx(above, px), slabPointFromPx(below, px)]
      return [(p[0] - q[0]) / (2 * step), (p[1] - q[1]) / (2 * step)] as const
    })
    const [gx, gy] = [gradients.map((g) => g[0]), gradients.map((g) => g[1])]
    const sum = gradients.map((g) => g[0] + g[1])
    const click = clickCovariance(middle, px, clickSdPx)
    const xx = quadraticForm(sigma, gx) + click.xx
    const yy = quadraticForm(sigma, gy) + click.yy
    // (x + y)'s variance holds the covariance of both.
    const xy =
      (quadraticForm(sigma, sum) - quadraticForm(sigma, gx) - quadraticForm(sigma, gy)) / 2 + click.xy
    return { at: slabPointFromPx(middle, px), sdMm: Math.sqrt((xx + yy) / 2 + Math.hypot((xx - yy) / 2, xy)) }
  }
}

function clickCovariance(
  frame: SlabFrame,
  px: PxPoint,
  sdPx: number,
): { readonly xx: number; readonly xy: number; readonly yy: number } {
  const at = slabPointFromPx(frame, px)
  const right = slabPointFromPx(frame, pxPoint(px[0] + 1, px[1]))
  const below = slabPointFromPx(frame, pxPoint(px[0], px[1] + 1))
  const [a, b] = [right[0] - at[0], right[1] - at[1]]
  const [c, d] = [below[0] - at[0], below[1] - at[1]]
  const s = sdPx * sdPx
  return { xx: s * (a * a + c * c), xy: s * (a * b + c * d), yy: s * (b * b + d * d) }
}
