import { clipToBox } from '../cuts'
import {
  type Bounds,
  type Region,
  regionAreaMm2,
  regionsAreaMm2,
  type Ring,
  ringAreaMm2,
  ringBounds,
  subtractRegions,
  type TablePoint,
  tablePoint,
} from '../geometry'
import { boundsTouch, clipToOutline } from './clipToOutline'
import { type Gap, gapsOf, type TableVoid } from './gaps'
import { type KeptEdge, keptEdgesOf } from './keptEdges'
import { type SideGap, sideGapsOf } from './sideGaps'
import { type Spare, spareDistance } from './spareDistance'
import type { SideChoices } from './tableSides'

/** A piece laid into the table, wherever it came from. */
export interface LaidPiece {
  readonly name: string
  readonly region: Region<TablePoint>
}

export interface CoverageInput {
  readonly finished: Ring<TablePoint>
  readonly blank: Ring<TablePoint>
  readonly sides: SideChoices
  /** The slab's own wood where the footprint's cuts have closed in on it. */
  readonly mainWood: readonly Region<TablePoint>[]
  readonly slabOutline: Ring<TablePoint>
  readonly voids: readonly TableVoid[]
  readonly laid: readonly LaidPiece[]
}

export interface LaidInBlank {
  readonly name: string
  readonly inBlank: readonly Region<TablePoint>[]
  readonly areaInBlankMm2: number
}

export interface Overlap {
  readonly name: string
  /** Name of the other laid piece; null: the slab's own wood. */
  readonly otherName: string | null
  readonly areaMm2: number
}

export interface Coverage {
  readonly finishedAreaMm2: number
  /** What is wood or gap: the blank without the air beyond kept edges. */
  readonly blankAreaMm2: number
  readonly mainWood: readonly Region<TablePoint>[]
  readonly mainAreaMm2: number
  readonly mainInFinishedMm2: number
  readonly laid: readonly LaidInBlank[]
  readonly laidAreaMm2: number
  readonly gaps: readonly Gap[]
  readonly sideGaps: readonly SideGap[]
  readonly keptEdges: readonly KeptEdge[]
  /** Null where wood is short of the finished outline. */
  readonly spare: Spare<TablePoint> | null
  readonly overlaps: readonly Overlap[]
}

/** An overlap smaller than this is two edges laid against each other, mm²: a metre of edge within 0.05 mm. */
const LEAST_OVERLAP_MM2 = 50

/**
 * How wood fills the table.
 * @returns areas in mm², gaps, and where wood is short or to spare, all in the table frame
 * Rules: LAY-1 to LAY-6, LAY-8.
 */
export function coverageOf(input: CoverageInput): Coverage {
  const mainWood = clipToBox(input.mainWood, ringBounds(input.blank))
  const { laid, overlaps } = layPieces(input.laid, mainWood, ringBounds(input.blank))
  const laidWood = laid.flatMap(({ inBlank }) => inBlank)
  const { gaps, airAreaMm2 } = gapsOf({ ...input, mainWood, laidWood })
  const edgeGaps = gaps.filter(({ kind }) => kind === 'edge').map(({ region }) => region)
  const sideGaps = sideGapsOf(input.finished, input.sides, edgeGaps)
  const hasKeptSide = Object.values(input.sides).some(({ finish }) => finish === 'live')
  return {
    finishedAreaMm2: ringAreaMm2(input.finished),
    blankAreaMm2: ringAreaMm2(input.blank) - airAreaMm2,
    mainWood,
    mainAreaMm2: regionsAreaMm2(mainWood),
    mainInFinishedMm2: regionsAreaMm2(clipToOutline(mainWood, input.finished)),
    laid,
    laidAreaMm2: laid.reduce((sum, piece) => sum + piece.areaInBlankMm2, 0),
    gaps,
    sideGaps,
    keptEdges: keptEdgesOf(input.finished, input.sides, mainWood),
    spare:
      sideGaps.length > 0 || hasKeptSide || mainWood.length === 0
        ? null
        : spareDistance(input.finished, input.slabOutline, tablePoint),
    overlaps,
  }
}

/** Laid pieces one after the other; wood that lies on wood counts once and is reported. */
function layPieces(
  pieces: readonly LaidPiece[],
  mainWood: readonly Region<TablePoint>[],
  blank: Bounds,
): { readonly laid: readonly LaidInBlank[]; readonly overlaps: readonly Overlap[] } {
  const laid: LaidInBlank[] = []
  const overlaps: Overlap[] = []
  for (const { name, region } of pieces) {
    let inBlank = clipToBox([region], blank)
    const below = [
      { name: null, wood: mainWood },
      ...laid.map((other) => ({ name: other.name, wood: other.inBlank })),
    ]
    for (const other of below) {
      const near = other.wood.filter((wood) => inBlank.some((face) => boundsTouch(face, wood)))
      const free = near.length === 0 ? inBlank : subtractRegions(inBlank, near)
      const areaMm2 = regionsAreaMm2(inBlank) - regionsAreaMm2(free)
      if (areaMm2 > LEAST_OVERLAP_MM2) overlaps.push({ name, otherName: other.name, areaMm2 })
      inBlank = free
    }
    laid.push({ name, inBlank, areaInBlankMm2: regionsAreaMm2(inBlank) })
  }
  return { laid, overlaps }
}

/** Area of the edge gaps or the void gaps, mm². */
export function gapAreaMm2(gaps: readonly Gap[], kind: Gap['kind']): number {
  return gaps.reduce((sum, gap) => (gap.kind === kind ? sum + regionAreaMm2(gap.region) : sum), 0)
}
