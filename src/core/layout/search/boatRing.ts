import { type Ring, type TablePoint, tablePoint } from '../../geometry'
import { InvariantError } from '../../units'
import { CHORD_ERROR_MM } from '../finishedRing'

/**
 * A boat-shaped top: its two long sides are arcs, widest in the middle, its two ends straight.
 * @param lengthMm   from end to end
 * @param widthMm    in the middle
 * @param endWidthMm at the ends, from 0 (pointed) to less than the width
 * @returns positive ring in the table frame, mm, whose bounds begin at 0, 0; arcs within CHORD_ERROR_MM
 * @throws InvariantError when the sizes are none, or an arc would be more than half a circle
 * Method: an arc with chord L and rise h has the radius (L²/4 + h²)/2h.
 */
export function boatRing(lengthMm: number, widthMm: number, endWidthMm: number): Ring<TablePoint> {
  const riseMm = (widthMm - endWidthMm) / 2
  if (!(lengthMm > 0) || !(endWidthMm >= 0) || !(riseMm > 0) || riseMm > lengthMm / 2) {
    throw new InvariantError('a boat shape is longer than it is wide, and narrower at its ends', {
      lengthMm,
      widthMm,
      endWidthMm,
    })
  }
  const radiusMm = (lengthMm ** 2 / 4 + riseMm ** 2) / (2 * riseMm)
  const halfRad = Math.asin(Math.min(1, lengthMm / 2 / radiusMm))
  // An even count, so that the widest place is a corner.
  const steps = 2 * Math.max(2, Math.ceil(halfRad / Math.acos(1 - CHORD_ERROR_MM / radiusMm) / 2))
  // The far side from start to end; the near one is its mirror image, from end to start.
  const far = Array.from({ length: steps + 1 }, (_, k) => {
    const turn = halfRad * ((2 * k) / steps - 1)
    return tablePoint(lengthMm / 2 + radiusMm * Math.sin(turn), radiusMm - radiusMm * Math.cos(turn))
  })
  const near = far.map(([x, y]) => tablePoint(lengthMm - x, widthMm - y))
  return endWidthMm === 0 ? [...far, ...near.slice(1, -1)] : [...far, ...near]
}
