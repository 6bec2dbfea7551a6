import {
  applyIsometry,
  invertIsometry,
  type Isometry,
  type Point,
  pointDistanceMm,
  pxPoint,
  type PxPoint,
  slabPoint,
  type SlabPoint,
  tablePoint,
  type TablePoint,
} from '../../core/geometry'
import { pxFromSlabPoint, slabPointFromPx } from '../../core/photo'
import type { SlabScaleResult } from '../../core/plan'
import type { ViewName } from '../../state/sessionStore'

/**
 * What one world point of a view is in each frame, and back. The world is photo pixels in the view 'photo', slab
 * millimetres in 'above', table millimetres in 'table'. Null where there is no answer (no scale yet, no table laid,
 * or beyond the slab's horizon in the picture).
 */
export interface Frames {
  /** Straight lines on the slab are drawn by points in between: the lens bows them. */
  readonly isBowed: boolean
  readonly pxFromWorld: (world: Point) => PxPoint | null
  readonly worldFromPx: (px: PxPoint) => Point | null
  readonly slabFromWorld: (world: Point) => SlabPoint | null
  readonly worldFromSlab: (at: SlabPoint) => Point | null
  readonly tableFromWorld: (world: Point) => TablePoint | null
  readonly worldFromTable: (at: TablePoint) => Point | null
}

/**
 * @param scale         the slab's scale, null while it has none
 * @param footprintPose table frame in the slab frame, null while the table is not laid on this slab
 */
export function framesOf(
  view: ViewName,
  scale: SlabScaleResult | null,
  footprintPose: Isometry | null,
): Frames {
  if (view === 'table') return tableFrames(footprintPose)
  const slabFrames = view === 'photo' ? photoFrames(scale) : aboveFrames(scale)
  return { ...slabFrames, ...throughSlab(slabFrames, footprintPose) }
}

type SlabFrames = Omit<Frames, 'tableFromWorld' | 'worldFromTable'>

function photoFrames(scale: SlabScaleResult | null): SlabFrames {
  return {
    isBowed: true,
    pxFromWorld: ([x, y]) => pxPoint(x, y),
    worldFromPx: (px) => px,
    slabFromWorld: ([x, y]) => scale && slabFromPx(scale, pxPoint(x, y)),
    worldFromSlab: (at) => scale && pxFromSlab(scale, at),
  }
}

function aboveFrames(scale: SlabScaleResult | null): SlabFrames {
  return {
    isBowed: false,
    pxFromWorld: ([x, y]) => scale && pxFromSlab(scale, slabPoint(x, y)),
    worldFromPx: (px) => scale && slabFromPx(scale, px),
    slabFromWorld: ([x, y]) => slabPoint(x, y),
    worldFromSlab: (at) => at,
  }
}

function tableFrames(footprintPose: Isometry | null): Frames {
  const back = footprintPose && invertIsometry(footprintPose)
  return {
    isBowed: false,
    pxFromWorld: () => null,
    worldFromPx: () => null,
    slabFromWorld: (world) => footprintPose && applyIsometry(footprintPose, world, slabPoint),
    worldFromSlab: (at) => back && applyIsometry(back, at, tablePoint),
    tableFromWorld: ([x, y]) => tablePoint(x, y),
    worldFromTable: (at) => at,
  }
}

function throughSlab(
  frames: SlabFrames,
  footprintPose: Isometry | null,
): Pick<Frames, 'tableFromWorld' | 'worldFromTable'> {
  const back = footprintPose && invertIsometry(footprintPose)
  return {
    tableFromWorld: (world) => {
      const at = frames.slabFromWorld(world)
      return at && back && applyIsometry(back, at, tablePoint)
    },
    worldFromTable: (at) =>
      footprintPose && frames.worldFromSlab(applyIsometry(footprintPose, at, slabPoint)),
  }
}

/** Null for what lies behind the camera. */
function pxFromSlab({ frame }: SlabScaleResult, at: SlabPoint): PxPoint | null {
  const px = pxFromSlabPoint(frame, at)
  return isFinitePoint(px) ? px : null
}

/** Null above the horizon of the slab's plane. */
function slabFromPx({ frame }: SlabScaleResult, px: PxPoint): SlabPoint | null {
  const at = slabPointFromPx(frame, px)
  return isFinitePoint(at) ? at : null
}

const isFinitePoint = ([x, y]: Point): boolean => Number.isFinite(x) && Number.isFinite(y)

/** A ring or line in the world; null when part of it lies beyond the horizon. */
export function worldPath<P>(points: readonly P[], worldFrom: (point: P) => Point | null): Point[] | null {
  const path: Point[] = []
  for (const point of points) {
    const world = worldFrom(point)
    if (world === null) return null
    path.push(world)
  }
  return path
}

/** The lens bows straight lines: in the photo they are drawn in steps of at most this length. */
const STEP_MM = 100

/**
 * The same path with points put in between, so that it can be drawn by its points in a photo.
 * @param closed also between the last point and the first
 */
export function steppedPath<P extends Point>(
  points: readonly P[],
  closed: boolean,
  make: (x: number, y: number) => P,
): readonly P[] {
  return points.flatMap((from, i) => {
    const to = points[i + 1] ?? (closed ? points[0] : undefined)
    if (!to) return [from]
    const steps = Math.max(1, Math.ceil(pointDistanceMm(from, to) / STEP_MM))
    return Array.from({ length: steps }, (_, n) => {
      const share = n / steps
      return make(from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1]))
    })
  })
}
