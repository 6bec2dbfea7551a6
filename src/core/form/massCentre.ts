import { type Region, ringMoments, tablePoint, type TablePoint } from '../geometry'

/** Flat parts of one material. */
export interface WeighedPart {
  readonly regions: readonly Region<TablePoint>[]
  readonly thicknessMm: number
  readonly densityKgPerM3: number
}

export interface MassCentre {
  readonly massKg: number
  readonly centre: TablePoint
}

/**
 * Weight of a top and where it balances.
 * @returns null where nothing weighs anything
 * Method: areas and centroids of the rings (geometry), a hole counting less.
 * Rules: HAND-2.
 */
export function massCentre(parts: readonly WeighedPart[]): MassCentre | null {
  let [massKg, x, y] = [0, 0, 0]
  for (const { regions, thicknessMm, densityKgPerM3 } of parts) {
    const kgPerMm2 = (thicknessMm * densityKgPerM3) / 1e9
    for (const ring of regions.flatMap(({ outer, holes }) => [outer, ...holes])) {
      const { areaMm2, centroid } = ringMoments(ring)
      massKg += areaMm2 * kgPerMm2
      x += areaMm2 * kgPerMm2 * centroid[0]
      y += areaMm2 * kgPerMm2 * centroid[1]
    }
  }
  return massKg > 0 ? { massKg, centre: tablePoint(x / massKg, y / massKg) } : null
}
