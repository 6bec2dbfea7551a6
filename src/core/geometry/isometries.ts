import type { Isometry } from './isometry'
import type { Point } from './point'
import type { Region, Ring } from './region'
import { reverseRing } from './reverseRing'

/** Leaves every point where it is. */
export const IDENTITY_ISOMETRY: Isometry = { xMm: 0, yMm: 0, angleRad: 0, turnedOver: false }

/**
 * Where a point lands.
 * @param iso  turned over first (y → −y), then turned (x towards y), then moved
 * @param p    mm in the frame that is placed
 * @param make maker of the target plane's points, e.g. `tablePoint`
 * Rules: GEO-8.
 */
export function applyIsometry<Q extends Point>(
  iso: Isometry,
  p: Point,
  make: (x: number, y: number) => Q,
): Q {
  const cos = Math.cos(iso.angleRad)
  const sin = Math.sin(iso.angleRad)
  const y = iso.turnedOver ? -p[1] : p[1]
  return make(iso.xMm + cos * p[0] - sin * y, iso.yMm + sin * p[0] + cos * y)
}

/**
 * A ring placed elsewhere. Turning over would flip its sign, so the points are then listed the other way round: an outer
 * ring stays positive, a hole negative. The first point stays the first.
 * Rules: GEO-8.
 */
export function applyIsometryToRing<Q extends Point>(
  iso: Isometry,
  ring: Ring,
  make: (x: number, y: number) => Q,
): Ring<Q> {
  const placed = ring.map((p) => applyIsometry(iso, p, make))
  return iso.turnedOver ? reverseRing(placed) : placed
}

/** A region placed elsewhere; ring signs are kept, also when it is turned over. Rules: GEO-8. */
export const applyIsometryToRegion = <Q extends Point>(
  iso: Isometry,
  region: Region,
  make: (x: number, y: number) => Q,
): Region<Q> => ({
  outer: applyIsometryToRing(iso, region.outer, make),
  holes: region.holes.map((hole) => applyIsometryToRing(iso, hole, make)),
})

/**
 * The placement that brings every point back.
 * Method: with M the turning over and R(θ) the turn, (R(θ)M)⁻¹ = M·R(−θ), which is R(θ)·M when turned over.
 * Rules: GEO-8.
 */
export function invertIsometry(iso: Isometry): Isometry {
  const angleRad = iso.turnedOver ? iso.angleRad : -iso.angleRad
  const turn: Isometry = { xMm: 0, yMm: 0, angleRad, turnedOver: iso.turnedOver }
  const [x, y] = applyIsometry(turn, [iso.xMm, iso.yMm], plainPoint)
  return { xMm: 0 - x, yMm: 0 - y, angleRad: wrappedAngleRad(angleRad), turnedOver: iso.turnedOver }
}

/**
 * One placement that does `inner` first, then `outer`.
 * Rules: GEO-8.
 */
export function composeIsometries(outer: Isometry, inner: Isometry): Isometry {
  const [xMm, yMm] = applyIsometry(outer, [inner.xMm, inner.yMm], plainPoint)
  const innerAngleRad = outer.turnedOver ? -inner.angleRad : inner.angleRad
  return {
    xMm,
    yMm,
    angleRad: wrappedAngleRad(outer.angleRad + innerAngleRad),
    turnedOver: outer.turnedOver !== inner.turnedOver,
  }
}

const plainPoint = (x: number, y: number): Point => [x, y]

/** The same turn within −π … π; an angle already there is returned as it is, to the last bit. */
function wrappedAngleRad(angleRad: number): number {
  if (Math.abs(angleRad) <= Math.PI) return angleRad
  return angleRad - 2 * Math.PI * Math.round(angleRad / (2 * Math.PI))
}
