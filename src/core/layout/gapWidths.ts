import {
  interiorPoint,
  offsetRegions,
  pointToRingDistanceMm,
  type Region,
  regionAreaMm2,
  regionsAreaMm2,
  simplifyRing,
  type TablePoint,
} from '../geometry'

/** How wide a gap is: what decides how hot resin gets in it, and how long it takes to set. */
export interface GapWidths {
  /** Across the largest circle that fits in it. */
  readonly widestMm: number
  /** Of the circles that fit, so large that `NARROW_SHARE` of the gap is too narrow for them. */
  readonly narrowestMm: number
}

/**
 * Share of a gap that may be narrower than what is called its narrowest place: every gap runs out to nothing in its
 * tips, and a tip of a few per cent does not hold up the next pour. Common practice, no source.
 */
export const NARROW_SHARE = 0.05

/** Wiggles of an edge below this do not change a width that is given to the whole mm. */
const SIMPLIFY_MM = 0.5
const HALVINGS = 9

/**
 * Widest and narrowest width of a gap.
 * @param region mm, with an inside
 * @returns mm; the widest within 2 % (`interiorPoint`), the narrowest to 1/500 of the widest, never above it
 * Method: the largest circle by interior search; the narrowest by shrinking and growing again (`offsetRegions`): what
 * does not come back is narrower than the circle. Halved until the share that is lost is NARROW_SHARE.
 * Rules: LAY-40, LAY-41.
 */
export function gapWidthsMm(region: Region<TablePoint>): GapWidths {
  const simple = simplified(region)
  const centre = interiorPoint(simple)
  const radiusMm = Math.min(
    ...[simple.outer, ...simple.holes].map((ring) => pointToRingDistanceMm(centre, ring)),
  )
  const areaMm2 = regionAreaMm2(simple)
  const isLostTooMuch = (r: number): boolean => openedAreaMm2(simple, r) < (1 - NARROW_SHARE) * areaMm2
  let [low, high] = [0, radiusMm]
  if (!isLostTooMuch(radiusMm * 0.98)) low = radiusMm
  else {
    for (let step = 0; step < HALVINGS; step += 1) {
      const middle = (low + high) / 2
      if (isLostTooMuch(middle)) high = middle
      else low = middle
    }
  }
  // A gap all tip still has a width: the least that was tried.
  return { widestMm: 2 * radiusMm, narrowestMm: 2 * Math.max(low, radiusMm / 2 ** HALVINGS) }
}

/** What circles of this radius can reach. */
function openedAreaMm2(region: Region<TablePoint>, radiusMm: number): number {
  const shrunk = offsetRegions([region], -radiusMm, 'round')
  return shrunk.length === 0 ? 0 : regionsAreaMm2(offsetRegions(shrunk, radiusMm, 'round'))
}

/** Fewer points; the region itself where it is so thin that it would be lost. */
function simplified(region: Region<TablePoint>): Region<TablePoint> {
  const outer = simplifyRing(region.outer, SIMPLIFY_MM)
  const simple = { outer, holes: region.holes.map((hole) => simplifyRing(hole, SIMPLIFY_MM)) }
  const isUsable = outer.length >= 3 && regionAreaMm2(simple) > 0.9 * regionAreaMm2(region)
  return isUsable ? simple : region
}
