import { clipToBox } from '../cuts'
import {
  type Region,
  regionAreaMm2,
  type Ring,
  ringBounds,
  subtractRegions,
  type TablePoint,
} from '../geometry'
import { boundsTouch } from './clipToOutline'
import { sidesReached } from './sidesReached'
import { TABLE_SIDES, type SideChoices } from './tableSides'

/** A hole in the slab, seen from the table. */
export interface TableVoid {
  readonly ring: Ring<TablePoint>
  /** Null: right through the slab. */
  readonly depthMm: number | null
}

export interface Gap {
  readonly kind: 'edge' | 'void'
  readonly region: Region<TablePoint>
  readonly areaMm2: number
  /** Depth of the hole; null: as deep as the cast. */
  readonly depthMm: number | null
}

export interface GapInput {
  readonly blank: Ring<TablePoint>
  readonly sides: SideChoices
  /** The slab's own wood in the blank, which has the voids as its holes, and what is laid into the gaps. */
  readonly mainWood: readonly Region<TablePoint>[]
  readonly laidWood: readonly Region<TablePoint>[]
  readonly voids: readonly TableVoid[]
}

export interface Gaps {
  readonly gaps: readonly Gap[]
  /** Blank outside a kept live edge. */
  readonly airAreaMm2: number
}

/**
 * What is not wood in the blank.
 * @returns edge gaps and void gaps to be filled, and the area of air beyond kept live edges
 * Method: blank − wood − voids gives the edge gaps, of which those that open on a kept side are air; the voids are
 * clipped to the blank, and wood that is laid into one is taken out of it.
 * Rules: LAY-1, LAY-2, LAY-3.
 */
export function gapsOf({ blank, sides, mainWood, laidWood, voids }: GapInput): Gaps {
  const blankRegion: Region<TablePoint> = { outer: blank, holes: [] }
  const voidRegions = voids.map(({ ring }) => ({ outer: ring, holes: [] }))
  const open = subtractRegions([blankRegion], [...mainWood, ...laidWood, ...voidRegions])
  const isAir = opensOnKeptSide(blank, sides)
  const edge = open.filter((region) => !isAir(region)).map((region) => gapOf('edge', region, null))
  const inVoids = voids.flatMap(({ ring, depthMm }) => {
    const hole: Region<TablePoint> = { outer: ring, holes: [] }
    const inBlank = clipToBox([hole], ringBounds(blank))
    const over = laidWood.filter((face) => boundsTouch(face, hole))
    const empty = inBlank.length === 0 || over.length === 0 ? inBlank : subtractRegions(inBlank, over)
    return empty.map((region) => gapOf('void', region, depthMm))
  })
  const airAreaMm2 = open.filter(isAir).reduce((sum, region) => sum + regionAreaMm2(region), 0)
  return { gaps: [...edge, ...inVoids], airAreaMm2 }
}

function gapOf(kind: Gap['kind'], region: Region<TablePoint>, depthMm: number | null): Gap {
  return { kind, region, areaMm2: regionAreaMm2(region), depthMm }
}

/** The blank ends beyond all wood on a kept side, so a gap that reaches its rim there is open to the air. */
function opensOnKeptSide(
  blank: Ring<TablePoint>,
  sides: SideChoices,
): (region: Region<TablePoint>) => boolean {
  const kept = TABLE_SIDES.filter((side) => sides[side].finish === 'live')
  const rim = ringBounds(blank)
  return (region) => sidesReached(region, rim).some((side) => kept.includes(side))
}
