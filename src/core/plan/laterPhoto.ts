import { type PxPoint, pointDistanceMm, slabPoint } from '../geometry'
import {
  laterSlabFrame,
  type PhotoRegistration,
  pxFromSlabPoint,
  registerPhoto,
  type ScaleProblemCode,
  type SharedMark,
  type SlabScale,
  slabPointFromPlane,
  slabPointFromPx,
  slabScaleFromMarks,
} from '../photo'
import { issueOf, type PlanPath } from './issue'
import { blockedBy, type Found, type Part, ready } from './part'
import type { LaterPhotoResult, SlabScaleResult } from './planResult'
import type { Photo, Slab, Trace } from './schema'
import { pxPerMmAt, scaleInputOf } from './slabScalePart'

/** Marks that a photo needs to have a scale and a place of its own. */
const NEEDED_MARKS = 4
/** Lasting marks are holes and lines a few millimetres wide: more than this is a wrong mark, mm. */
const FITTING_MM = 5

export interface LaterPhotoInput {
  readonly slabId: string
  readonly marks: Slab['marks']
  readonly tapedDistances: Slab['tapedDistances']
  readonly photo: Photo
  readonly first: SlabScaleResult
}

/**
 * A later photo of the slab, laid on the first by the marks that both show: the slab frame as that photo sees it.
 * @returns blocked, with a warning that says why, where too few marks are shared; the slab's own results stand without it
 * Between shared marks that nobody taped the distance found on the first photo counts as taped: a cleaned slab need not
 * be taped again. Rules: PLN-14.
 */
export function laterPhotoPart(input: LaterPhotoInput): Found<LaterPhotoResult> {
  const { slabId, photo, first } = input
  const at: PlanPath = ['slabs', slabId, 'photos', photo.id]
  const said = { photoName: photo.fileName }
  const known = new Map(first.markPositions.map((mark) => [mark.markId, mark.at]))
  const shared = photo.observations.map(({ markId }) => markId).filter((markId) => known.has(markId))
  if (shared.length < NEEDED_MARKS) {
    const values = { ...said, marks: shared.length, needed: NEEDED_MARKS }
    return blockedBy([issueOf('later-photo-few-marks', 'warning', at, values)])
  }
  const found = laterScale(input, shared)
  const scale = found.scale
  if (scale === null) return blockedBy([issueOf('later-photo-no-scale', 'warning', at, said)])
  const sharedMarks = scale.markPositions.flatMap(({ markId, at: inLater }): readonly SharedMark[] => {
    const onSlab = known.get(markId)
    return onSlab === undefined ? [] : [{ markId, onSlab, inLater }]
  })
  const registration = registerPhoto(sharedMarks, photo.face)
  if (!registration.ok) return blockedBy([issueOf('later-photo-no-scale', 'warning', at, said)])
  const { rmsMm } = registration.value
  const value = laterResult(input, scale, registration.value)
  const isOff = rmsMm > FITTING_MM || found.problems.some(({ code }) => DISAGREEING.has(code))
  return ready(
    value,
    isOff ? [issueOf('later-photo-off', 'warning', at, { ...said, offMm: value.worstMm })] : [],
  )
}

/** With five shared marks or more the distances between them say that one is wrong; four always fit some view. */
const DISAGREEING: ReadonlySet<ScaleProblemCode> = new Set<ScaleProblemCode>([
  'distance-disagrees',
  'distances-disagree',
])

function laterResult(
  { marks, photo, first }: LaterPhotoInput,
  scale: SlabScale,
  registration: PhotoRegistration,
): LaterPhotoResult {
  const frame = laterSlabFrame(scale, registration)
  const markPositions = scale.markPositions.map(({ markId, at }) => ({
    markId,
    name: marks.find(({ id }) => id === markId)?.name ?? '',
    at: slabPointFromPlane(frame, at),
  }))
  return {
    photoId: photo.id,
    frame,
    scale,
    markPositions,
    distanceChecks: [],
    pxPerMm: pxPerMmAt(frame, markPositions),
    datum: {
      ...first.datum,
      fromPx: pxFromSlabPoint(frame, slabPoint(0, 0)),
      toPx: pxFromSlabPoint(frame, slabPoint(first.datum.lengthMm, 0)),
    },
    sharedMarks: registration.residuals.length,
    worstMm: Math.max(...registration.residuals.map(({ offMm }) => offMm)),
    rmsMm: registration.rmsMm,
  }
}

function laterScale(
  { slabId, marks, tapedDistances, photo, first }: LaterPhotoInput,
  shared: readonly string[],
): ReturnType<typeof slabScaleFromMarks> {
  const isSeen = (markId: string): boolean => photo.observations.some((seen) => seen.markId === markId)
  const taped = tapedDistances.filter(({ markIds }) => markIds.every(isSeen))
  const isTaped = (a: string, b: string): boolean =>
    taped.some(({ markIds }) => markIds.includes(a) && markIds.includes(b))
  const places = first.markPositions.filter(({ markId }) => shared.includes(markId))
  const found = places.flatMap((from, n) =>
    places.slice(n + 1).flatMap((to) =>
      isTaped(from.markId, to.markId)
        ? []
        : [
            {
              id: `${from.markId} ${to.markId}`,
              markIds: [from.markId, to.markId] as const,
              lengthMm: pointDistanceMm(from.at, to.at),
            },
          ],
    ),
  )
  const input = scaleInputOf(
    {
      slabId,
      // A hole lies in the face; what stood above it on the first photo is no lasting mark.
      marks: marks.map((mark) => ({ ...mark, heightMm: 0 })),
      tapedDistances: [...taped, ...found],
      boards: [],
      rules: [],
      // The other face was not read, and a cleaned one no longer.
      flatness: { kind: 'unknown' },
      span: null,
      photo,
      datum: null,
    },
    photo,
  )
  return slabScaleFromMarks(input)
}

/**
 * Everything that was traced of the slab, in the first photo's pixels: what a later photo shows is carried there by way
 * of the slab. The last photo's outline takes the place of older ones; voids are added to those of older photos, also
 * where one is traced again. What was traced on a photo that has no place yet waits. Of the underside only what goes right through
 * the slab counts. Rules: PLN-14.
 */
export function carriedTraces(
  { capture }: Slab,
  first: SlabScaleResult,
  later: ReadonlyMap<string, Part<LaterPhotoResult>>,
): readonly Trace[] {
  if (capture.kind !== 'photo') return []
  return capture.photos.reduce<readonly Trace[]>((older, photo) => {
    const own = capture.traces.filter(({ photoId }) => photoId === photo.id)
    if (photo.id === first.photoId) return [...older, ...own]
    const part = later.get(photo.id)
    if (part?.state !== 'ready') return older
    const carried = own
      .filter((trace) => isOnFace(trace, photo))
      .map((trace) => carriedTrace(trace, first, part.value))
    const isOutlined = carried.some(({ meaning }) => meaning.kind === 'outline')
    return [...(isOutlined ? older.filter(({ meaning }) => meaning.kind !== 'outline') : older), ...carried]
  }, [])
}

const isOnFace = ({ meaning }: Trace, { face }: Photo): boolean =>
  face === 'top' ||
  meaning.kind === 'outline' ||
  meaning.kind === 'bark' ||
  ('depth' in meaning && meaning.depth.kind === 'through')

const carriedTrace = (trace: Trace, first: SlabScaleResult, later: LaterPhotoResult): Trace => ({
  ...trace,
  photoId: first.photoId,
  ringPx: trace.ringPx.map((px): PxPoint => pxFromSlabPoint(first.frame, slabPointFromPx(later.frame, px))),
})
