import type { Point, Region, Ring, SlabPoint, TablePoint } from '../../core/geometry'
import { slabPoint, tablePoint } from '../../core/geometry'
import { type Frames, steppedPath, worldPath } from './frames'

/** Points of a ring in the view's world, in drawing order. */
export type WorldPath = readonly Point[]

type PathCache = WeakMap<object, WorldPath | null>

// A ring of a result is never changed in place, and frames are made anew whenever they change: the pair is a sure key.
const slabPaths = new WeakMap<Frames, PathCache>()
const tablePaths = new WeakMap<Frames, PathCache>()

function remembered(
  caches: WeakMap<Frames, PathCache>,
  frames: Frames,
  ring: object,
  make: () => WorldPath | null,
): WorldPath | null {
  const cache = caches.get(frames) ?? new WeakMap<object, WorldPath | null>()
  caches.set(frames, cache)
  const known = cache.get(ring)
  if (known !== undefined) return known
  const path = make()
  cache.set(ring, path)
  return path
}

/** A closed ring of the slab; null when part of it lies beyond the horizon. */
export const slabRingPath = (frames: Frames, ring: Ring<SlabPoint>): WorldPath | null =>
  remembered(slabPaths, frames, ring, () =>
    worldPath(frames.isBowed ? steppedPath(ring, true, slabPoint) : ring, frames.worldFromSlab),
  )

export const tableRingPath = (frames: Frames, ring: Ring<TablePoint>): WorldPath | null =>
  remembered(tablePaths, frames, ring, () =>
    worldPath(frames.isBowed ? steppedPath(ring, true, tablePoint) : ring, frames.worldFromTable),
  )

/** An open line on the slab. */
export function slabLinePath(frames: Frames, points: readonly SlabPoint[]): WorldPath | null {
  return worldPath(frames.isBowed ? steppedPath(points, false, slabPoint) : points, frames.worldFromSlab)
}

/** Outer rings and holes of regions, without those that lie beyond the horizon. */
export const regionPaths = <P extends Point>(
  frames: Frames,
  regions: readonly Region<P>[],
  pathOf: (frames: Frames, ring: Ring<P>) => WorldPath | null,
): readonly WorldPath[] =>
  regions
    .flatMap(({ outer, holes }) => [outer, ...holes])
    .map((ring) => pathOf(frames, ring))
    .filter((path) => path !== null)
