import type { Region, SlabPoint } from '../../geometry'
import { slabPoint } from '../../geometry'
import { InvariantError } from '../../units'
import type { GrainLimit } from './angleRange'

/** A part of the slab that the maker wants in the table (worth above 0) or out of it (below 0). */
export interface WishZone {
  readonly regions: readonly Region<SlabPoint>[]
  /** How much plain wood, mm², one mm² of the zone is worth. */
  readonly worthPerMm2: number
}

/** What the maker cares about besides as much wood as possible. */
export interface PoseWishes {
  /** Extra worth of wood in a band along the two long edges; 0: none. */
  readonly longEdgeWorth: number
  /** Extra worth of wood in a band along the two ends. */
  readonly endWorth: number
  /** How wide these bands are, mm. */
  readonly bandMm: number
  /** What a void costs beside a gap of the same area: 0 welcome, 1 the same, above 1 unwelcome. */
  readonly voidCost: number
  readonly zones: readonly WishZone[]
  readonly grain: GrainLimit | null
}

/** As much wood as possible, voids counted as gaps. */
export const NO_WISHES: PoseWishes = {
  longEdgeWorth: 0,
  endWorth: 0,
  bandMm: 60,
  voidCost: 1,
  zones: [],
  grain: null,
}

const POINT_CORNERS = 16

/**
 * A figure to be kept inside, or a defect to be kept out, given as a point with some room about it.
 * @param worthMm2 wood that one would give up for it, mm²; below 0 to keep it out
 * @param roomMm   radius about the point, > 0
 */
export function pointZone(at: SlabPoint, roomMm: number, worthMm2: number): WishZone {
  if (!(roomMm > 0)) throw new InvariantError('a point needs room about it', { roomMm })
  const outer = Array.from({ length: POINT_CORNERS }, (_, k) => {
    const turn = (2 * Math.PI * k) / POINT_CORNERS
    return slabPoint(at[0] + roomMm * Math.cos(turn), at[1] + roomMm * Math.sin(turn))
  })
  const areaMm2 = (POINT_CORNERS / 2) * roomMm * roomMm * Math.sin((2 * Math.PI) / POINT_CORNERS)
  return { regions: [{ outer, holes: [] }], worthPerMm2: worthMm2 / areaMm2 }
}
