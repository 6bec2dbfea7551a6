import type { ClipKind, OffsetJoin } from './clippingKernel'
import { clipRings, offsetRings } from './clippingKernel'
import { InvariantError } from '../units'
import type { Point } from './point'
import type { Region, Ring } from './region'
import { withoutSlivers } from './withoutSlivers'

/**
 * Everything that lies in a or in b, as regions that neither overlap nor cross themselves.
 * @returns parts, holes with their sign; faces and holes below SLIVER_AREA_MM2 are left out (`withoutSlivers`)
 * Approximations: see clippingKernel.ts (grid CLIP_GRID_MM; rings above CLIP_VERTEX_LIMIT vertices are simplified first).
 * Rules: GEO-5, GEO-6.
 */
export const uniteRegions = <P extends Point>(
  a: readonly Region<P>[],
  b: readonly Region<P>[] = [],
): readonly Region<P>[] => combine('unite', a, b)

/** Everything that lies in a and in b; otherwise as `uniteRegions`. Rules: GEO-5, GEO-6. */
export const intersectRegions = <P extends Point>(
  a: readonly Region<P>[],
  b: readonly Region<P>[],
): readonly Region<P>[] => combine('intersect', a, b)

/** Everything that lies in a but not in b; otherwise as `uniteRegions`. Rules: GEO-5, GEO-6. */
export const subtractRegions = <P extends Point>(
  a: readonly Region<P>[],
  b: readonly Region<P>[],
): readonly Region<P>[] => combine('subtract', a, b)

/**
 * Regions made of loose rings.
 * @param rings in any order; their signs say what they are: outer rings positive, holes negative. Holes may overlap each
 *   other and run over the edge. The negative lobe of a ring that crosses itself is lost: use `normaliseOutline` first.
 * @returns parts, holes with their sign, slivers left out
 * Rules: GEO-4, GEO-6.
 */
export const regionsFromRings = <P extends Point>(rings: readonly Ring<P>[]): readonly Region<P>[] =>
  withoutSlivers(clipRings('unite', rings, []))

/**
 * Regions grown by deltaMm on every side, or shrunk when it is negative (holes then grow).
 * @param deltaMm finite
 * @param join    'round': every place within deltaMm; 'mitre': sharp corners, up to MITRE_LIMIT × deltaMm, then square;
 *   'square': corners cut off square at deltaMm
 * @returns parts that neither overlap nor cross; none when everything was shrunk away; slivers left out
 * @throws InvariantError when deltaMm is not finite
 * Approximations: grid as for the booleans; round corners are chords inside their arc, off by at most
 * ARC_TOLERANCE_MM (a 500th of the offset if that is less).
 * Method: union first (an offset of rings that touch or cross loses lobes), then the kernel's offset.
 * Rules: GEO-6, GEO-7.
 */
export function offsetRegions<P extends Point>(
  regions: readonly Region<P>[],
  deltaMm: number,
  join: OffsetJoin,
): readonly Region<P>[] {
  if (!Number.isFinite(deltaMm)) throw new InvariantError('an offset must be finite', { deltaMm })
  const clean = uniteRegions(regions)
  return deltaMm === 0 ? clean : withoutSlivers(offsetRings(ringsOf(clean), deltaMm, join))
}

const combine = <P extends Point>(kind: ClipKind, a: readonly Region<P>[], b: readonly Region<P>[]) =>
  withoutSlivers(clipRings(kind, ringsOf(a), ringsOf(b)))

const ringsOf = <P extends Point>(regions: readonly Region<P>[]): readonly Ring<P>[] =>
  regions.flatMap((region) => [region.outer, ...region.holes])
