import type { PxPoint, SlabPoint } from '../geometry'
import { CAMERA_STEPS, cameraWith, thetaOf } from './adjustment'
import { slabFrame, type SlabFrame, slabPointFromPx } from './slabFrame'
import type { SlabScale } from './scaleOfPhoto'
import type { ThetaGradient } from './uncertainty'

/** A place of the slab, and how it would shift in the slab frame with each of θ. */
export interface PlaceGradient {
  readonly at: SlabPoint
  readonly alongX: ThetaGradient
  readonly alongY: ThetaGradient
}

/**
 * How places move in the slab frame when θ does, the datum's own place included.
 * @param datum the two anchors of the slab frame, px
 * @returns a function from pixels to places, for outlines of hundreds of points; null when the datum carries no frame
 * Method: central differences over θ in the whole chain pixel → slab frame. Rules: PHO-15.
 */
export function placeGradients(
  scale: SlabScale,
  datum: { readonly fromPx: PxPoint; readonly toPx: PxPoint },
): ((px: PxPoint) => PlaceGradient) | null {
  const theta = thetaOf(scale.camera)
  const frameAt = (i: number, step: number): SlabFrame | null => {
    const camera = cameraWith(scale.camera, theta.with(i, (theta[i] ?? 0) + step))
    const frame = slabFrame({ ...scale, camera }, datum)
    return frame.ok ? frame.value : null
  }
  const middle = slabFrame(scale, datum)
  const pairs = CAMERA_STEPS.flatMap((step, i) => {
    const [above, below] = [frameAt(i, step), frameAt(i, -step)]
    return above && below ? [{ above, below, step }] : []
  })
  if (!middle.ok || pairs.length < CAMERA_STEPS.length) return null
  return (px) => {
    const slopes = pairs.map(({ above, below, step }) => {
      const [p, q] = [slabPointFromPx(above, px), slabPointFromPx(below, px)]
      return [(p[0] - q[0]) / (2 * step), (p[1] - q[1]) / (2 * step)] as const
    })
    return {
      at: slabPointFromPx(middle.value, px),
      alongX: slopes.map((slope) => slope[0]),
      alongY: slopes.map((slope) => slope[1]),
    }
  }
}
