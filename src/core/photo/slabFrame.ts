import { type Point, type PxPoint, type SlabPoint, slabPoint } from '../geometry'
import { ok, problem, type Result } from '../units'
import { type Camera, planePointFromPx, pxFromPlanePoint } from './camera'
import type { SlabScale } from './scaleOfPhoto'

/** The slab frame of one photo: plain data. x runs from the first datum anchor to the second, y down as seen. */
export interface SlabFrame {
  readonly camera: Camera
  /** First anchor in the plane frame (of a mirrored one: with y turned round), mm. */
  readonly originMm: Point
  /** Unit vector of the slab frame's x in the plane frame. */
  readonly along: Point
  /** The photo shows the other face, where the slab frame's y runs up instead of down. */
  readonly isMirrored?: boolean
}

/** Anchors nearer than this in truth cannot carry a direction: 1 mm of click error would turn the frame by 2°. */
const LEAST_DATUM_MM = 30

/**
 * The slab frame: origin at the first anchor, x towards the second, y down as the face is seen from above.
 * @param datum the chalked line's two anchors in photo pixels
 * @returns the frame; problems `datum-too-short` {lengthMm}, `datum-off-slab` (above the horizon)
 * A new reference changes the scale of what is stored in this frame and never turns or shifts it on the wood.
 * Rules: PHO-11.
 */
export function slabFrame(
  scale: SlabScale,
  datum: { readonly fromPx: PxPoint; readonly toPx: PxPoint },
): Result<SlabFrame> {
  const from = planePointFromPx(scale.camera, datum.fromPx)
  const to = planePointFromPx(scale.camera, datum.toPx)
  const lengthMm = Math.hypot(to[0] - from[0], to[1] - from[1])
  if (!Number.isFinite(lengthMm)) return problem('datum-off-slab')
  if (lengthMm < LEAST_DATUM_MM) return problem('datum-too-short', { lengthMm })
  const along: Point = [(to[0] - from[0]) / lengthMm, (to[1] - from[1]) / lengthMm]
  return ok({ camera: scale.camera, originMm: from, along })
}

/** The point of the slab's face that a pixel shows; NaN for a pixel above the horizon. Rules: PHO-11. */
export const slabPointFromPx = (frame: SlabFrame, px: PxPoint): SlabPoint =>
  slabPointFromPlane(frame, planePointFromPx(frame.camera, px))

/** The slab point of a plane-frame point. */
export function slabPointFromPlane(frame: SlabFrame, [x, seenY]: Point): SlabPoint {
  const y = frame.isMirrored === true ? -seenY : seenY
  const [dx, dy] = [x - frame.originMm[0], y - frame.originMm[1]]
  return slabPoint(dx * frame.along[0] + dy * frame.along[1], dy * frame.along[0] - dx * frame.along[1])
}

/** The plane-frame point of a slab point. */
export function planePointFromSlab(frame: SlabFrame, [x, y]: Point): Point {
  const planeY = frame.originMm[1] + x * frame.along[1] + y * frame.along[0]
  return [
    frame.originMm[0] + x * frame.along[0] - y * frame.along[1],
    frame.isMirrored === true ? -planeY : planeY,
  ]
}

/** Where a point of the slab's face shows in the photo; NaN for a point behind the camera. */
export const pxFromSlabPoint = (frame: SlabFrame, point: SlabPoint): PxPoint =>
  pxFromPlanePoint(frame.camera, planePointFromSlab(frame, point))
