import { type PxPoint, pxPoint, type SlabPoint } from '../geometry'
import { placeGradients } from './placeGradients'
import type { SlabScale } from './scaleOfPhoto'
import { slabFrame, type SlabFrame, slabPointFromPx } from './slabFrame'
import { thetaVariance } from './uncertainty'

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
  const frame = slabFrame(scale, datum)
  const gradientsAt = placeGradients(scale, datum)
  if (!frame.ok || gradientsAt === null) return null
  return (px) => {
    const { at, alongX, alongY } = gradientsAt(px)
    const click = clickCovariance(frame.value, px, clickSdPx)
    const [varianceX, varianceY] = [thetaVariance(scale, alongX), thetaVariance(scale, alongY)]
    // (x + y)'s variance holds the covariance of both.
    const varianceOfSum = thetaVariance(
      scale,
      alongX.map((value, i) => value + (alongY[i] ?? 0)),
    )
    const xx = varianceX + click.xx
    const yy = varianceY + click.yy
    const xy = (varianceOfSum - varianceX - varianceY) / 2 + click.xy
    return { at, sdMm: Math.sqrt((xx + yy) / 2 + Math.hypot((xx - yy) / 2, xy)) }
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
