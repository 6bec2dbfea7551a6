import type { SideChoices, TableSide, Verdict } from '../../layout'
import type { SlabScale } from '../../photo'
import type { OptionAccuracy } from '../planResult'
import { drawnMargins, type TightPlace } from './tightPlaces'

export interface MarginAccuracyInput {
  readonly scale: SlabScale
  readonly verdict: Verdict
  readonly sides: SideChoices
  readonly places: readonly TightPlace[]
}

/** Places deeper than the verdict says belong to a corner, mm beyond its depth. */
const BEYOND_MM = 0.5

const UNKNOWN = { marginSdMm: null, coverChance: null } as const

/**
 * How sure the margin is, and how likely wood reaches all along every side that wants it.
 * @returns nulls where a live edge is kept or the table is off the slab; no chance for a table that is to be filled
 * Method: draws over the tight places (`drawnMargins`). Rules: PLN-10, PLN-11.
 */
export function marginAccuracy({
  scale,
  verdict,
  sides,
  places,
}: MarginAccuracyInput): Pick<OptionAccuracy, 'marginSdMm' | 'coverChance'> {
  switch (verdict.kind) {
    case 'covers':
    case 'covers-with-voids': {
      if (verdict.spareMm === null) return UNKNOWN
      const margins = drawnMargins(scale, withLeast(places, verdict.spareMm))
      return { marginSdMm: spread(margins, verdict.spareMm), coverChance: shareAbove(margins) }
    }
    case 'short': {
      const sawn = places.filter(({ side }) => sides[side].finish === 'sawn')
      const { side, depthMm } = verdict
      return {
        marginSdMm: shortSd(scale, places, side, depthMm),
        coverChance: shareAbove(drawnMargins(scale, sawn)),
      }
    }
    case 'needs-fill': {
      const { worstSide, depthMm } = verdict
      return { marginSdMm: shortSd(scale, places, worstSide, depthMm), coverChance: null }
    }
    default:
      return UNKNOWN
  }
}

/** Of how far wood is short on one side. */
function shortSd(
  scale: SlabScale,
  places: readonly TightPlace[],
  side: TableSide,
  depthMm: number,
): number | null {
  const onSide = places.filter(
    (place) =>
      place.side === side && place.isAtGap && place.marginMm < 0 && -place.marginMm <= depthMm + BEYOND_MM,
  )
  return spread(drawnMargins(scale, withLeast(onSide, -depthMm)), -depthMm)
}

/** The places moved together so that the least margin is the one stated: stretches know it to a few millimetres only. */
function withLeast(places: readonly TightPlace[], leastMm: number): readonly TightPlace[] {
  const least = Math.min(...places.map(({ marginMm }) => marginMm))
  return places.map((place) => ({ ...place, marginMm: place.marginMm - least + leastMm }))
}

const spread = (margins: readonly number[], statedMm: number): number | null =>
  margins.length === 0
    ? null
    : Math.sqrt(margins.reduce((sum, margin) => sum + (margin - statedMm) ** 2, 0) / margins.length)

const shareAbove = (margins: readonly number[]): number | null =>
  margins.length === 0 ? null : margins.filter((margin) => margin > 0).length / margins.length
