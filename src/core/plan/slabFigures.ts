import { slabAccuracy } from './accuracy/slabAccuracy'
import { type Issue, issueOf } from './issue'
import { carriedTraces, laterPhotoPart } from './laterPhoto'
import { after, blockedBy, type Found, ready } from './part'
import type { LaterPhotoResult, SlabAccuracy, SlabResult, SlabScaleResult } from './planResult'
import { rememberRecent } from './rememberRecent'
import type { Photo, Slab, Trace } from './schema'
import { type ScalePartInput, slabScalePart } from './slabScalePart'
import { slabShape } from './slabShape'
import { spanText } from './slabSpan'
import { stationsShape } from './stationsShape'

/** Results kept per part: more than the slabs of a long job, few enough to forget what was dragged past. */
const SLABS_KEPT = 64

/** Part of a plan's result, and what there is to say about it. */
export interface Figures<R> {
  readonly result: R
  readonly issues: readonly Issue[]
}

const scaleFigures = rememberRecent(slabScalePart, SLABS_KEPT)
const shapeFigures = rememberRecent(slabShape, SLABS_KEPT)
const accuracyFigures = rememberRecent(slabAccuracy, SLABS_KEPT)
const laterFigures = rememberRecent(laterPhotoPart, SLABS_KEPT)
/** Everything that is worked out of one slab; the same slab gives the very same answer. */
export const slabFigures = rememberRecent(slabFiguresOf, SLABS_KEPT)

function slabFiguresOf({ slab }: { readonly slab: Slab }): Figures<SlabResult> {
  const { id: slabId, capture, marks, tapedDistances, boards, rules, flatness, thicknessMm } = slab
  if (capture.kind === 'stations') {
    const { part, issues } = stationsShape(slabId, capture.stations)
    return {
      result: {
        slabId,
        scale: { state: 'blocked', because: [] },
        laterPhotos: new Map(),
        shape: part,
        accuracy: part.state === 'ready' ? { state: 'ready', value: null } : part,
      },
      issues: [...slabThickness(slab).issues, ...issues],
    }
  }
  const photo = capture.photos[0] ?? null
  const { datum } = capture
  const span = outlineSpan(capture.traces, photo, datum)
  const scale = scaleFigures({ slabId, marks, tapedDistances, boards, rules, flatness, photo, datum, span })
  const first = scale.part.state === 'ready' ? scale.part.value : null
  const later = first === null ? [] : laterPhotosOf(slab, first)
  const laterPhotos = new Map(later.map(({ photoId, found }) => [photoId, found.part]))
  // With one photo the traces stay the very same list, so that nothing is worked out twice.
  const traces =
    first === null || later.length === 0 ? capture.traces : carriedTraces(slab, first, laterPhotos)
  const shape = after(scale.part, ({ photoId, frame }) =>
    shapeFigures({ slabId, thicknessMm, traces, photoId, frame }),
  )
  const accuracy = photo === null ? ready(null) : slabAccuracyPart(traces, photo, scale.part, shape.part)
  return {
    result: { slabId, scale: scale.part, laterPhotos, shape: shape.part, accuracy: accuracy.part },
    issues: [
      ...slabThickness(slab).issues,
      ...scale.issues,
      ...later.flatMap(({ found }) => found.issues),
      ...shape.issues,
    ],
  }
}

function laterPhotosOf(
  slab: Slab,
  first: SlabScaleResult,
): readonly { readonly photoId: string; readonly found: Found<LaterPhotoResult> }[] {
  const photos = slab.capture.kind === 'photo' ? slab.capture.photos.slice(1) : []
  const { marks, tapedDistances } = slab
  const slabId = slab.id
  return photos.map((photo) => ({
    photoId: photo.id,
    found: laterFigures({ slabId, marks, tapedDistances, photo, first }),
  }))
}

function slabAccuracyPart(
  traces: readonly Trace[],
  photo: Photo,
  scale: SlabResult['scale'],
  shape: SlabResult['shape'],
): Found<SlabAccuracy | null> {
  return after(scale, (scaleValue) =>
    after(shape, (shapeValue) => accuracyFigures({ scale: scaleValue, shape: shapeValue, traces, photo })),
  )
}

/** How thick the slab is; nothing in the photo tells it. */
export function slabThickness({ id, thicknessMm }: Slab): Found<number> {
  return thicknessMm === null
    ? blockedBy([issueOf('slab-thickness-missing', 'blocker', ['slabs', id, 'thicknessMm'])])
    : ready(thicknessMm)
}

function outlineSpan(
  traces: readonly Trace[],
  photo: Photo | null,
  datum: ScalePartInput['datum'],
): string | null {
  const outline = traces.find(({ meaning, photoId }) => meaning.kind === 'outline' && photoId === photo?.id)
  return outline === undefined || photo === null ? null : spanText({ ringPx: outline.ringPx, photo, datum })
}
