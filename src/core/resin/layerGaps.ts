import { gapAreaMm2, gapHeightsMm, gapVolumeMm3, gapWidthsMm, type PourGap } from './gapVolume'
import { notice, type ResinNotice } from './notice'

/** What one layer fills, and the two gaps that rule it: the hottest and the slowest. */
export interface LayerGaps {
  readonly gapLitres: number
  /** Depth that the hottest gap counts as, and its widest place. */
  readonly hotDepthMm: number
  readonly widestMm: number
  readonly widestName: string
  readonly slowDepthMm: number
  readonly narrowestMm: number
  readonly narrowestName: string
  readonly notices: readonly ResinNotice[]
}

interface GapPart {
  readonly gap: PourGap
  readonly volumeMm3: number
  readonly depthMm: number
  /** Volume over the area at its top, where that is more than the depth: a gap wider below. */
  readonly countsAsMm: number
  readonly narrowestMm: number
  readonly widestMm: number
}

/** Thin films beside the wood: they cure on the wood's time and are no measure for the layer. */
const FILMS: readonly PourGap['kind'][] = ['clearance', 'under']
/** A gap that has less than half of the layer's depth does not rule it. */
const RULING_SHARE = 0.5
/** How much more a gap wider below counts before it is said. */
const WIDER_SHARE = 1.02

/**
 * The part of the gaps between two heights.
 * @param gaps  usable (isUsableGap)
 * @returns litres without loss; widths of the widest and the narrowest ruling gap
 * Method: Simpson over the sections; depth of a gap wider below = volume / area at its top (a layer is cooled from
 * above only by what lies open).
 * Rules: RES-13, RES-17.
 */
export function layerGaps(gaps: readonly PourGap[], fromMm: number, toMm: number, layer: number): LayerGaps {
  const parts = gaps.flatMap((gap) => partOf(gap, fromMm, toMm))
  const layerMm = toMm - fromMm
  const ruling = parts.filter(
    ({ depthMm, gap }) => depthMm >= RULING_SHARE * layerMm && !FILMS.includes(gap.kind),
  )
  const found = ruling.length > 0 ? ruling : parts
  const measured = found.length > 0 ? found : [nothing(layerMm)]
  const widest = measured.reduce((best, part) => (part.widestMm > best.widestMm ? part : best))
  const narrowest = measured.reduce((best, part) => (part.narrowestMm < best.narrowestMm ? part : best))
  return {
    gapLitres: parts.reduce((sum, part) => sum + part.volumeMm3, 0) / 1e6,
    hotDepthMm: Math.max(...measured.map(({ countsAsMm }) => countsAsMm)),
    widestMm: widest.widestMm,
    widestName: widest.gap.name,
    slowDepthMm: narrowest.depthMm,
    narrowestMm: narrowest.narrowestMm,
    narrowestName: narrowest.gap.name,
    notices: measured
      .filter(({ countsAsMm, depthMm }) => countsAsMm > WIDER_SHARE * depthMm)
      .map(({ gap, countsAsMm, depthMm }) =>
        notice('gap-wider-below', 'warning', { gapName: gap.name, layer, depthMm, countsAsMm }),
      ),
  }
}

/** A layer that no gap reaches: as wide as it is deep, and empty. */
const nothing = (depthMm: number): GapPart => ({
  gap: { name: '', kind: 'edge', sections: [] },
  volumeMm3: 0,
  depthMm,
  countsAsMm: depthMm,
  narrowestMm: depthMm,
  widestMm: depthMm,
})

function partOf(gap: PourGap, fromMm: number, toMm: number): readonly GapPart[] {
  const widths = gapWidthsMm(gap, fromMm, toMm)
  if (widths === null) return []
  const [bottomMm, topMm] = gapHeightsMm(gap)
  const high = Math.min(toMm, topMm)
  const depthMm = high - Math.max(fromMm, bottomMm)
  const volumeMm3 = gapVolumeMm3(gap, fromMm, toMm)
  const topAreaMm2 = gapAreaMm2(gap, high)
  const countsAsMm = topAreaMm2 > 0 ? Math.max(depthMm, volumeMm3 / topAreaMm2) : depthMm
  const [narrowestMm, widestMm] = widths
  // A hollow all but closed at its top would count as endlessly deep.
  return [{ gap, volumeMm3, depthMm, countsAsMm: Math.min(countsAsMm, 4 * depthMm), narrowestMm, widestMm }]
}
