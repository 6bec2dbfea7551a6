import { pxPoint, type PxPoint } from '../../src/core/geometry'
import {
  blankOption,
  blankPhotoSlab,
  blankPlan,
  type Option,
  type Plan,
  type Slab,
} from '../../src/core/plan'

/** Photo pixels per mm in a flat plan: a photo taken from straight above. */
export const FLAT_PX_PER_MM = 1
const SLAB_START_PX = [500, 500] as const

/** A place on the flat slab, mm from its datum's start, as a pixel of its photo. */
export const flatPx = (xMm: number, yMm: number): PxPoint =>
  pxPoint(SLAB_START_PX[0] + xMm * FLAT_PX_PER_MM, SLAB_START_PX[1] + yMm * FLAT_PX_PER_MM)

const box = (minX: number, minY: number, maxX: number, maxY: number): readonly PxPoint[] => [
  flatPx(minX, minY),
  flatPx(maxX, minY),
  flatPx(maxX, maxY),
  flatPx(minX, maxY),
]

const MARKS = [
  { id: 'a', name: 'A', at: [0, 0] },
  { id: 'b', name: 'B', at: [1800, 0] },
  { id: 'c', name: 'C', at: [1800, 600] },
  { id: 'd', name: 'D', at: [0, 600] },
] as const

export interface FlatSlab {
  /** Outline in mm from mark A; a rectangle from (−200, −150) to (2000, 750) when left out. */
  readonly outline?: readonly PxPoint[]
  readonly voids?: readonly { readonly ring: readonly PxPoint[]; readonly depthMm: number | null }[]
  readonly thicknessMm?: number | null
}

/**
 * A slab seen from straight above at 1 px = 1 mm with four marks 1800 × 600 mm apart and all six taped distances (the
 * diagonal is √(1800² + 600²)), so that every figure of it can be worked out by hand.
 */
export function flatSlab(more: FlatSlab = {}): Slab {
  const photo = {
    id: 'photo',
    hash: '0'.repeat(64),
    fileName: 'flat.jpg',
    mediaType: 'image/jpeg' as const,
    widthPx: 3000,
    heightPx: 2000,
    focalLength35mm: null,
    face: 'top' as const,
    observations: MARKS.map(({ id, at }) => ({
      markId: id,
      atPx: flatPx(at[0], at[1]),
      sdPx: null,
      refinement: { kind: 'none' as const },
    })),
    straightLines: [],
  }
  const slab = blankPhotoSlab(
    'slab',
    'Flat slab',
    photo,
    more.thicknessMm === undefined ? 50 : more.thicknessMm,
  )
  const distances = MARKS.flatMap((from, i) =>
    MARKS.slice(i + 1).map((to) => ({
      id: `${from.id}${to.id}`,
      markIds: [from.id, to.id] as const,
      lengthMm: Math.hypot(to.at[0] - from.at[0], to.at[1] - from.at[1]),
    })),
  )
  const voids = (more.voids ?? []).map(({ ring, depthMm }, index) => ({
    id: `void${index}`,
    photoId: 'photo',
    meaning: {
      kind: 'void' as const,
      depth: depthMm === null ? { kind: 'through' as const } : { kind: 'partial' as const, depthMm },
    },
    ringPx: ring,
    origin: { kind: 'hand' as const },
  }))
  const outline = {
    id: 'outline',
    photoId: 'photo',
    meaning: { kind: 'outline' as const },
    ringPx: more.outline ?? box(-200, -150, 2000, 750),
    origin: { kind: 'hand' as const },
  }
  return {
    ...slab,
    marks: MARKS.map(({ id, name }) => ({ id, name, heightMm: 0 })),
    tapedDistances: distances,
    capture: {
      kind: 'photo',
      photos: [photo],
      datum: { photoId: 'photo', fromPx: flatPx(0, 0), toPx: flatPx(1800, 0) },
      traces: [outline, ...voids],
    },
  }
}

/** A table without oversize laid at a place on the flat slab. */
export function flatOption(
  lengthMm: number,
  widthMm: number,
  at: { readonly xMm: number; readonly yMm: number; readonly angleRad?: number },
): Option {
  const blank = blankOption('option', 'As drawn')
  const side = (finish: 'sawn' | 'filled') => ({ finish, oversizeMm: 0 })
  return {
    ...blank,
    // Without clearance, so that a gap's litres are its area × depth and no more.
    resin: { ...blank.resin, clearanceMm: 0 },
    table: {
      outline: { kind: 'rectangle', lengthMm, widthMm },
      thicknessMm: 40,
      sides: { start: side('sawn'), end: side('sawn'), far: side('filled'), near: side('filled') },
    },
    footprint: {
      slabId: 'slab',
      pose: { xMm: at.xMm, yMm: at.yMm, angleRad: at.angleRad ?? 0, turnedOver: false },
    },
  }
}

export const flatPlan = (
  slab: Slab = flatSlab(),
  option: Option = flatOption(2000, 800, { xMm: -100, yMm: -100 }),
): Plan => ({
  ...blankPlan('plan', 'option'),
  slabs: [slab],
  options: [option],
})

export { box as flatBox }
