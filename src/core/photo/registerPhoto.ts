import { type Point, pointDistanceMm, slabPoint, type SlabPoint } from '../geometry'
import { ok, problem, type Result } from '../units'
import type { SlabScale } from './scaleOfPhoto'
import type { SlabFrame } from './slabFrame'

/** Where a mark lies in the slab frame of the first photo, and in the plane frame of a later one. */
export interface SharedMark {
  readonly markId: string
  readonly onSlab: SlabPoint
  readonly inLater: Point
}

/** How the plane of a later photo lies on the slab: turned and moved, and mirrored for the other face. */
export interface PhotoRegistration {
  readonly cos: number
  readonly sin: number
  readonly shiftMm: Point
  readonly isMirrored: boolean
  /** How far each shared mark is from where the first photo has it, mm. */
  readonly residuals: readonly { readonly markId: string; readonly offMm: number }[]
  readonly rmsMm: number
}

/** Marks nearer to each other than this do not tell a direction, mm: 1 mm at one of them turns a 3 m slab's end by 10 mm. */
const LEAST_SPAN_MM = 300

/**
 * Lays a later photo of the same slab onto the first by lasting marks that both show.
 * @param face the face that the later photo shows; its underside is seen mirrored
 * @returns the registration; problems `registration-too-few-marks` {count, needed}, `registration-marks-close` {spanMm}.
 *   Both photos keep their own scale: marks that moved, or a wrong scale, are left in the residuals.
 * Method: least squares without scaling, in closed form: Horn, Closed-form solution of absolute orientation using unit
 * quaternions, J. Opt. Soc. Am. A 4 (1987), in two dimensions (from memory). Rules: PHO-20.
 */
export function registerPhoto(
  shared: readonly SharedMark[],
  face: 'top' | 'underside',
): Result<PhotoRegistration> {
  if (shared.length < 2) return problem('registration-too-few-marks', { count: shared.length, needed: 2 })
  const spanMm = Math.max(...shared.flatMap((a) => shared.map((b) => pointDistanceMm(a.onSlab, b.onSlab))))
  if (spanMm < LEAST_SPAN_MM) return problem('registration-marks-close', { spanMm })
  const isMirrored = face === 'underside'
  const later = shared.map(({ inLater: [x, y] }): Point => [x, isMirrored ? -y : y])
  const [from, to] = [middleOf(later), middleOf(shared.map(({ onSlab }) => onSlab))]
  let along = 0
  let across = 0
  shared.forEach(({ onSlab }, n) => {
    const [px, py] = later[n] ?? [0, 0]
    const [ax, ay, bx, by] = [px - from[0], py - from[1], onSlab[0] - to[0], onSlab[1] - to[1]]
    along += ax * bx + ay * by
    across += ax * by - ay * bx
  })
  const size = Math.hypot(along, across)
  const [cos, sin] = [along / size, across / size]
  const turned = { cos, sin, isMirrored }
  const shiftMm: Point = [to[0] - (cos * from[0] - sin * from[1]), to[1] - (sin * from[0] + cos * from[1])]
  const residuals = shared.map(({ markId, onSlab, inLater }) => ({
    markId,
    offMm: pointDistanceMm(slabPointFromLater({ ...turned, shiftMm }, inLater), onSlab),
  }))
  const rmsMm = Math.sqrt(residuals.reduce((sum, { offMm }) => sum + offMm ** 2, 0) / residuals.length)
  return ok({ ...turned, shiftMm, residuals, rmsMm })
}

const middleOf = (points: readonly Point[]): Point => [
  points.reduce((sum, [x]) => sum + x, 0) / points.length,
  points.reduce((sum, [, y]) => sum + y, 0) / points.length,
]

/** The slab point of a point in the later photo's plane frame. */
export function slabPointFromLater(
  { cos, sin, shiftMm, isMirrored }: Pick<PhotoRegistration, 'cos' | 'sin' | 'shiftMm' | 'isMirrored'>,
  [x, seenY]: Point,
): SlabPoint {
  const y = isMirrored ? -seenY : seenY
  return slabPoint(cos * x - sin * y + shiftMm[0], sin * x + cos * y + shiftMm[1])
}

/** The slab frame as a later photo sees it: its pixels and those of the first photo then name the same wood. */
export function laterSlabFrame(
  { camera }: Pick<SlabScale, 'camera'>,
  { cos, sin, shiftMm: [x, y], isMirrored }: PhotoRegistration,
): SlabFrame {
  const originMm: Point = [-(cos * x + sin * y), sin * x - cos * y]
  return { camera, originMm, along: [cos, -sin], isMirrored }
}
