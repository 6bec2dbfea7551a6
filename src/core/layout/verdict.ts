import { type Coverage, gapAreaMm2 } from './coverage'
import type { SideChoices, TableSide } from './tableSides'

export type Verdict =
  | { readonly kind: 'covers'; readonly spareMm: number | null }
  | {
      readonly kind: 'covers-with-voids'
      readonly spareMm: number | null
      readonly voids: number
      readonly voidAreaMm2: number
    }
  | {
      readonly kind: 'needs-fill'
      readonly voids: number
      readonly edgeGapAreaMm2: number
      /** Resin at the edges as a share of the finished top. */
      readonly filledShare: number
      readonly worstSide: TableSide
      readonly depthMm: number
    }
  | { readonly kind: 'short'; readonly side: TableSide; readonly depthMm: number; readonly lengthMm: number }
  | { readonly kind: 'off-slab' }

/** Less wood than this under the table is no place for it, as a share of the finished top. */
const LEAST_WOOD_SHARE = 0.02

/**
 * Does the slab carry the table as it lies?
 * A sawn side needs wood all along; a filled side may be short, and resin makes it straight.
 * `spareMm` is null where a live edge is kept: its width is judged instead.
 */
export function verdictOf(coverage: Coverage, sides: SideChoices): Verdict {
  if (coverage.mainInFinishedMm2 < LEAST_WOOD_SHARE * coverage.finishedAreaMm2) return { kind: 'off-slab' }
  const shortSawn = coverage.sideGaps.find(({ side }) => sides[side].finish === 'sawn')
  if (shortSawn !== undefined) {
    const { side, greatestDepthMm, lengthMm } = shortSawn
    return { kind: 'short', side, depthMm: greatestDepthMm, lengthMm }
  }
  const voids = coverage.gaps.filter(({ kind }) => kind === 'void').length
  const worst = coverage.sideGaps[0]
  const spareMm = coverage.spare?.distanceMm ?? null
  if (worst !== undefined) {
    const edgeGapAreaMm2 = gapAreaMm2(coverage.gaps, 'edge')
    return {
      kind: 'needs-fill',
      voids,
      edgeGapAreaMm2,
      filledShare: edgeGapAreaMm2 / coverage.finishedAreaMm2,
      worstSide: worst.side,
      depthMm: worst.greatestDepthMm,
    }
  }
  if (voids === 0) return { kind: 'covers', spareMm }
  return { kind: 'covers-with-voids', spareMm, voids, voidAreaMm2: gapAreaMm2(coverage.gaps, 'void') }
}
