import { type Point, type Region, regionsAreaMm2, reverseRing } from '../../geometry'
import { type AreaGradient, areaKernel } from './areaKernel'
import { type EdgeSet, edgesOf } from './edgeSet'
import type { PoseWishes } from './poseWishes'
import type { SearchWood } from './searchWood'

/** Where the table's middle lies, relative to the wood's pivot, and the direction of its length. */
export interface MiddlePose {
  readonly xMm: number
  readonly yMm: number
  readonly angleRad: number
}

/** A rectangle fixed in the table: its middle from the table's, and half its sides, mm. */
export interface TableBand {
  readonly alongMm: number
  readonly acrossMm: number
  readonly halfLengthMm: number
  readonly halfWidthMm: number
}

/** One summand of a pose's worth: weight × area of some regions in a band of the table. */
export interface WorthTerm {
  readonly regions: readonly Region[]
  readonly edges: EdgeSet
  readonly areaMm2: number
  readonly band: TableBand
  readonly weight: number
}

export interface WorthGradient {
  readonly worthMm2: number
  readonly perXMm: number
  readonly perYMm: number
  readonly perRadMm2: number
  /** Length of the table's two ends, and of its two long sides, that lies in wood. */
  readonly endsMm: number
  readonly sidesMm: number
}

/**
 * A pose's worth as a sum of areas, so that every wish has the same exact kernel and gradient.
 * Rules: LAY-12.
 */
export function worthTerms(
  wood: SearchWood,
  lengthMm: number,
  widthMm: number,
  wishes: PoseWishes,
): readonly WorthTerm[] {
  const whole: TableBand = {
    alongMm: 0,
    acrossMm: 0,
    halfLengthMm: lengthMm / 2,
    halfWidthMm: widthMm / 2,
  }
  const isVoidWelcome = wishes.voidCost === 0
  const counted = isVoidWelcome ? wood.regions.map(({ outer }) => ({ outer, holes: [] })) : wood.regions
  const edges = isVoidWelcome ? edgesOf(counted, wood.pivot) : wood.edges
  const areaMm2 = regionsAreaMm2(counted)
  const bands = [{ band: whole, weight: 1 }, ...worthBands(lengthMm, widthMm, wishes)]
  return [
    ...bands.map(({ band, weight }) => ({ regions: counted, edges, areaMm2, band, weight })),
    ...zonesOf(wood, wishes).map(({ regions, weight }) => ({
      regions,
      edges: edgesOf(regions, wood.pivot),
      areaMm2: regionsAreaMm2(regions),
      band: whole,
      weight,
    })),
  ]
}

function worthBands(lengthMm: number, widthMm: number, { longEdgeWorth, endWorth, bandMm }: PoseWishes) {
  const [a, b] = [lengthMm / 2, widthMm / 2]
  const deepMm = Math.min(bandMm, widthMm / 2, lengthMm / 2) / 2
  const along = [-1, 1].map((side) => ({
    band: { alongMm: 0, acrossMm: side * (b - deepMm), halfLengthMm: a, halfWidthMm: deepMm },
    weight: longEdgeWorth,
  }))
  const across = [-1, 1].map((side) => ({
    band: { alongMm: side * (a - deepMm), acrossMm: 0, halfLengthMm: deepMm, halfWidthMm: b },
    weight: endWorth,
  }))
  return [...along, ...across].filter(({ weight }) => weight !== 0)
}

/** Voids count as gaps in the wood itself; what they cost beyond (or less than) that is a zone of its own. */
function zonesOf(wood: SearchWood, { voidCost, zones }: PoseWishes) {
  const voids: readonly Region[] = wood.regions.flatMap(({ holes }) =>
    holes.map((hole) => ({ outer: reverseRing(hole), holes: [] })),
  )
  const own = zones.map(({ regions, worthPerMm2 }) => ({
    regions: regions as readonly Region[],
    weight: worthPerMm2,
  }))
  if (voidCost === 0 || voidCost === 1 || voids.length === 0) return own
  return [...own, { regions: voids, weight: 1 - voidCost }]
}

/** The band's rectangle when the table lies at a pose. */
export function bandBox(band: TableBand, { xMm, yMm, angleRad }: MiddlePose) {
  const [cos, sin] = [Math.cos(angleRad), Math.sin(angleRad)]
  return {
    xMm: xMm + band.alongMm * cos - band.acrossMm * sin,
    yMm: yMm + band.alongMm * sin + band.acrossMm * cos,
    angleRad,
    halfLengthMm: band.halfLengthMm,
    halfWidthMm: band.halfWidthMm,
  }
}

/** A pose's worth and how it changes. Exact. Rules: LAY-11, LAY-12. */
export function worthAt(terms: readonly WorthTerm[], pose: MiddlePose): WorthGradient {
  let [worthMm2, perXMm, perYMm, perRadMm2] = [0, 0, 0, 0]
  let whole: AreaGradient | null = null
  for (const { edges, band, weight } of terms) {
    const box = bandBox(band, pose)
    const area = areaKernel(edges, box)
    // The first term is the wood under the whole table.
    whole ??= area
    const arm: Point = [box.xMm - pose.xMm, box.yMm - pose.yMm]
    worthMm2 += weight * area.areaMm2
    perXMm += weight * area.perXMm
    perYMm += weight * area.perYMm
    perRadMm2 += weight * (area.perRadMm2 - arm[1] * area.perXMm + arm[0] * area.perYMm)
  }
  return { worthMm2, perXMm, perYMm, perRadMm2, endsMm: whole?.endsMm ?? 0, sidesMm: whole?.sidesMm ?? 0 }
}
