import { type Bounds, slabPoint, type SlabPoint } from '../../geometry'
import { DEFAULT_CLICK_SD_PX, placeMeasurer, pxFromSlabPoint } from '../../photo'
import type { SlabScaleResult } from '../planResult'

export interface WeakCell extends Bounds {
  readonly sdMm: number
  /** How many of `WEAK_BANDS_MM` its ± reaches: 0 is good. */
  readonly band: number
}

export interface WeakPlaces {
  readonly cells: readonly WeakCell[]
  /** Places to state the ± at: the corners of what is shown, and its middle. */
  readonly stated: readonly { readonly at: SlabPoint; readonly sdMm: number }[]
}

/** Bands of the map, by ± (two deviations) of a place against the datum, mm: doubling, common practice, no source. */
export const WEAK_BANDS_MM = [2, 4, 8, 16, 32] as const
const DEVIATIONS = 2
const ALONG = 24
const LEAST_ACROSS = 6

/**
 * How sure each part of the slab is, for the map of where the photo is weak.
 * @param bounds what is shown, slab frame, mm
 * @returns cells of about equal sides; empty where the datum carries no frame. Parts that the photo does not see at all
 *   (above the horizon) are left out. Rules: PLN-10.
 */
export function weakPlaces({ scale, frame, datum }: SlabScaleResult, bounds: Bounds): WeakPlaces {
  const measure = placeMeasurer(scale, datum, DEFAULT_CLICK_SD_PX)
  if (measure === null) return { cells: [], stated: [] }
  const sdAt = (x: number, y: number): number => {
    const px = pxFromSlabPoint(frame, slabPoint(x, y))
    return px.every(Number.isFinite) ? measure(px).sdMm : Number.NaN
  }
  const { minX, minY, maxX, maxY } = bounds
  const across = Math.max(LEAST_ACROSS, Math.round((ALONG * (maxY - minY)) / (maxX - minX)))
  const [dx, dy] = [(maxX - minX) / ALONG, (maxY - minY) / across]
  const cells = Array.from({ length: ALONG * across }, (_, n): WeakCell => {
    const [x, y] = [minX + (n % ALONG) * dx, minY + Math.floor(n / ALONG) * dy]
    const sdMm = sdAt(x + dx / 2, y + dy / 2)
    return { minX: x, minY: y, maxX: x + dx, maxY: y + dy, sdMm, band: bandOf(sdMm) }
  })
  const inset = [0.08, 0.5, 0.92] as const
  const stated = inset.flatMap((u) =>
    (u === 0.5 ? [0.5] : [0.12, 0.88]).map((v) => {
      const [x, y] = [minX + u * (maxX - minX), minY + v * (maxY - minY)]
      return { at: slabPoint(x, y), sdMm: sdAt(x, y) }
    }),
  )
  return {
    cells: cells.filter(({ sdMm }) => Number.isFinite(sdMm)),
    stated: stated.filter(({ sdMm }) => Number.isFinite(sdMm)),
  }
}

const bandOf = (sdMm: number): number => WEAK_BANDS_MM.filter((least) => DEVIATIONS * sdMm >= least).length
