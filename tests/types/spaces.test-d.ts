// Compiled, not run: the compiler must refuse each marked line, and complains when it does not.
import type { PxPoint, Ring, SlabPoint, TablePoint } from '../../src/core/geometry'
import {
  addPoints,
  applyIsometry,
  IDENTITY_ISOMETRY,
  pxPoint,
  ringCentroid,
  slabPoint,
  tablePoint,
} from '../../src/core/geometry'

const px: PxPoint = pxPoint(1, 2)
const slab: SlabPoint = slabPoint(1, 2)

// @ts-expect-error photo pixels are not slab millimetres
const slabFromPx: SlabPoint = px
// @ts-expect-error slab millimetres are not table millimetres
const tableFromSlab: TablePoint = slab
// @ts-expect-error a bare pair of numbers belongs to no plane
const slabFromPair: SlabPoint = [1, 2]
// @ts-expect-error a ring of pixels is not a ring on the slab
const slabRingFromPx: Ring<SlabPoint> = [px, px, px]
// @ts-expect-error the centroid of pixels is a pixel place
const slabCentroidFromPx: SlabPoint = ringCentroid([px, px, px])
// @ts-expect-error placing gives the plane of the maker
const slabFromPlacing: SlabPoint = applyIsometry(IDENTITY_ISOMETRY, slab, tablePoint)

// And what must pass does.
const moved: SlabPoint = addPoints(slab, slab)
const placed: TablePoint = applyIsometry(IDENTITY_ISOMETRY, slab, tablePoint)

export const compiled = [
  slabFromPx,
  tableFromSlab,
  slabFromPair,
  slabRingFromPx,
  slabCentroidFromPx,
  slabFromPlacing,
  moved,
  placed,
]
