import { type Isometry, type Region, slabPoint, type SlabPoint } from '../../geometry'
import { acrossShrinkageFraction, movementMm, speciesNamed } from '../../wood'
import { type Issue, issueOf } from '../issue'
import type { Slab } from '../schema'

/**
 * One deviation of the share of its width that a slab of unknown moisture may yet lose, or lose more than was typed: a
 * half dry slab loses some 3 % of its width, a dry one nearly none. Common practice, no source.
 */
const UNKNOWN_MOISTURE_SD = 0.01
/** Of a slab whose moisture is known, but not what it will lose: a few per cent of moisture more or less. */
const KNOWN_MOISTURE_SD = 0.004
/** Of a loss that was typed. */
const TYPED_LOSS_SD = 0.002

export interface Drying {
  /** Share of its width that the slab loses until it is poured. */
  readonly lossFraction: number
  /** One standard deviation of that. */
  readonly sdFraction: number
}

type DriedSlab = Pick<Slab, 'moistureFraction' | 'species' | 'stock'>

/** A figure of the table may be a quarter off for one slab (core/wood, WOOD-3). */
const SPECIES_SD_SHARE = 0.125

/** Loss by the handbook's figures of the species, flat-sawn as slabs are; null where moistures or species are not known. */
function lossBySpecies({ moistureFraction, species, stock }: DriedSlab): number | null {
  const { pourMoistureFraction } = stock
  const wood = species === null ? null : speciesNamed(species)
  if (moistureFraction === null || pourMoistureFraction === null || wood === null) return null
  return Math.max(
    0,
    -movementMm(1, moistureFraction, pourMoistureFraction, acrossShrinkageFraction(wood, 'flat')),
  )
}

/**
 * What drying takes of a slab from its photo to the pour: as typed, else by its species. Along the grain wood hardly moves.
 * Rules: CHO-2.
 */
export function dryingOf(slab: DriedSlab): Drying {
  const { moistureFraction, stock } = slab
  if (stock.shrinkageFraction !== null)
    return { lossFraction: stock.shrinkageFraction, sdFraction: TYPED_LOSS_SD }
  const worked = lossBySpecies(slab)
  if (worked !== null) return { lossFraction: worked, sdFraction: worked * SPECIES_SD_SHARE }
  return { lossFraction: 0, sdFraction: moistureFraction === null ? UNKNOWN_MOISTURE_SD : KNOWN_MOISTURE_SD }
}

/** A slab that is too wet to be sealed in resin, now or as it is to be dried. Rules: CHO-2. */
export function drynessIssues(
  { id, moistureFraction, stock }: DriedSlab & Pick<Slab, 'id'>,
  limitFraction: number,
): readonly Issue[] {
  const share = stock.pourMoistureFraction ?? moistureFraction
  if (share === null || share <= limitFraction) return []
  return [issueOf('slab-not-dry', 'warning', ['slabs', id, 'moistureFraction'], { share, limitFraction })]
}

/** Wood as it will be when it is poured: narrower across the datum, along which the grain runs. Rules: CHO-2. */
export function driedRegions(
  regions: readonly Region<SlabPoint>[],
  lossFraction: number,
): readonly Region<SlabPoint>[] {
  if (lossFraction === 0) return regions
  const dried = ([x, y]: SlabPoint): SlabPoint => slabPoint(x, y * (1 - lossFraction))
  return regions.map(({ outer, holes }) => ({
    outer: outer.map(dried),
    holes: holes.map((hole) => hole.map(dried)),
  }))
}

/**
 * The pose on the slab as it is now, of a table that lies at a pose on the dried slab.
 * @param middle the table's middle in its own frame, mm: it stays where it is on the wood
 */
export function poseBeforeDrying(
  pose: Isometry,
  lossFraction: number,
  [u, v]: readonly [number, number],
): Isometry {
  if (lossFraction === 0) return pose
  const y = pose.yMm + u * Math.sin(pose.angleRad) + v * Math.cos(pose.angleRad)
  return { ...pose, yMm: pose.yMm + y / (1 - lossFraction) - y }
}
