import type { PxPoint } from '../../geometry'
import { type Help, whatWouldHelp } from '../../photo'
import type { SlabScaleResult } from '../planResult'
import type { Slab } from '../schema'
import { scaleInputOf } from '../slabScalePart'
import { spanText } from '../slabSpan'

export interface ScaleAdvice {
  readonly kind: Help['advice']['kind']
  /** Of the two marks to tape between; empty for other advice. */
  readonly markNames: readonly string[]
  /** Of long lengths over the slab, now and once the advice is followed, mm. */
  readonly sdNowMm: number
  readonly sdThenMm: number
}

/**
 * The one thing that would make the slab's lengths surest, of what the maker could still do.
 * @returns null when nothing on offer helps by a twentieth
 * Method: each offer as one more observation of the scale's θ (`whatWouldHelp`). Rules: PLN-10.
 */
export function scaleAdvice(slab: Slab, found: SlabScaleResult): ScaleAdvice | null {
  const { capture } = slab
  const photo = capture.kind === 'photo' ? capture.photos.find(({ id }) => id === found.photoId) : undefined
  if (capture.kind !== 'photo' || photo === undefined) return null
  const outline = capture.traces.find(
    ({ meaning, photoId }) => meaning.kind === 'outline' && photoId === photo.id,
  )
  const { datum } = capture
  const span = outline === undefined ? null : spanText({ ringPx: outline.ringPx, photo, datum })
  const input = scaleInputOf({ ...slab, slabId: slab.id, photo, datum, span }, photo)
  const probes = outline === undefined ? photo.observations.map(({ atPx }) => atPx) : corners(outline.ringPx)
  const [best] = whatWouldHelp(input, found.scale, probes)
  if (best === undefined) return null
  const { advice, sdNowMm, sdThenMm } = best
  const nameOf = (id: string): string => slab.marks.find((mark) => mark.id === id)?.name ?? ''
  return {
    kind: advice.kind,
    markNames: advice.kind === 'tape-distance' ? advice.markIds.map(nameOf) : [],
    sdNowMm,
    sdThenMm,
  }
}

/** The points of an outline that reach furthest towards the photo's corners and its sides. */
function corners(ringPx: readonly PxPoint[]): readonly PxPoint[] {
  const furthest = ([dx, dy]: readonly [number, number]): readonly PxPoint[] => {
    const [first] = ringPx
    if (first === undefined) return []
    const reach = ([x, y]: PxPoint): number => x * dx + y * dy
    return [ringPx.reduce((best, px) => (reach(px) > reach(best) ? px : best), first)]
  }
  const found = DIRECTIONS.flatMap(furthest)
  return found.filter((px, n) => found.indexOf(px) === n)
}

const DIRECTIONS = [-1, 0, 1].flatMap((dx) =>
  [-1, 0, 1].filter((dy) => dx !== 0 || dy !== 0).map((dy) => [dx, dy] as const),
)
