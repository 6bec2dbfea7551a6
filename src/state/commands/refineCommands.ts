import type { PxPoint } from '../../core/geometry'
import type { Photo, Plan, Slab } from '../../core/plan'
import type { Command } from '../command'
import { patched, patchedList, withPhoto, withSlab } from '../planEdits'
import { sameData } from '../sameData'
import { withDatumFollowing } from './withDatumFollowing'

type Observation = Photo['observations'][number]

/** What the program found in the pixels round one click. */
export type LookedAt =
  { readonly kind: 'refined'; readonly px: PxPoint; readonly sdPx: number } | { readonly kind: 'unsure' }

export interface LookedAtMark {
  readonly markId: string
  /** Where the mark stood when it was looked at: one that has moved on since is left alone. */
  readonly clickPx: PxPoint
  readonly found: LookedAt
}

/** The slab with its photo edited; a plan that no longer holds it is left alone, because an answer may come late. */
function withPhotoIfThere(
  plan: Plan,
  slabId: string,
  photoId: string,
  edit: (slab: Slab, photo: Photo) => Slab,
): Plan {
  const slab = plan.slabs.find(({ id }) => id === slabId)
  const photos = slab?.capture.kind === 'photo' ? slab.capture.photos : []
  const photo = photos.find(({ id }) => id === photoId)
  return photo === undefined ? plan : withSlab(plan, slabId, (found) => edit(found, photo))
}

function settled(seen: Observation, looked: LookedAtMark | undefined): Observation {
  if (looked === undefined || seen.refinement.kind !== 'none' || !sameData(seen.atPx, looked.clickPx))
    return seen
  if (looked.found.kind === 'unsure') return { ...seen, refinement: { kind: 'unsure' } }
  const { px, sdPx } = looked.found
  const refinement = { kind: 'refined', clickPx: seen.atPx, clickSdPx: seen.sdPx } as const
  return { ...seen, atPx: px, sdPx, refinement }
}

/** Clicks moved to what was found in the pixels round them: part of the step that set them (`amend`). */
export const settleClicks: Command<{
  readonly slabId: string
  readonly photoId: string
  readonly marks: readonly LookedAtMark[]
}> = {
  name: 'settleClicks',
  history: 'none',
  apply: (plan, { slabId, photoId, marks }) =>
    withPhotoIfThere(plan, slabId, photoId, (slab, photo) => {
      const after = photo.observations.map((seen) =>
        settled(
          seen,
          marks.find(({ markId }) => markId === seen.markId),
        ),
      )
      if (after.every((seen, n) => seen === photo.observations[n])) return slab
      const moved = withPhoto(slab, photoId, () => ({ ...photo, observations: after }))
      return after.reduce((following, seen, n) => {
        const fromPx = photo.observations[n]?.atPx ?? seen.atPx
        return withDatumFollowing(plan, following, { photoId, fromPx, toPx: seen.atPx })
      }, moved)
    }),
}

/** Points of a straight line moved onto it: part of the step that drew it (`amend`). */
export const settleLine: Command<{
  readonly slabId: string
  readonly photoId: string
  readonly lineId: string
  readonly clicksPx: readonly PxPoint[]
  readonly pointsPx: readonly PxPoint[]
  readonly sdPx: number
}> = {
  name: 'settleLine',
  history: 'none',
  apply: (plan, { slabId, photoId, lineId, clicksPx, pointsPx, sdPx }) =>
    withPhotoIfThere(plan, slabId, photoId, (slab, photo) => {
      const lines = photo.straightLines.map((line) =>
        line.id === lineId && sameData(line.pointsPx, clicksPx) ? patched(line, { pointsPx, sdPx }) : line,
      )
      return lines.every((line, n) => line === photo.straightLines[n])
        ? slab
        : withPhoto(slab, photoId, () => patchedList(photo, 'straightLines', lines))
    }),
}

/** Leaves a mark where the maker clicked it, or lets the program look again. */
export const keepClick: Command<{
  readonly slabId: string
  readonly photoId: string
  readonly markId: string
  readonly isKept: boolean
}> = {
  name: 'keepClick',
  history: 'step',
  apply: (plan, { slabId, photoId, markId, isKept }) =>
    withSlab(plan, slabId, (slab) =>
      withPhoto(slab, photoId, (photo) => {
        const observations = photo.observations.map((seen) =>
          seen.markId === markId ? keptOrNot(seen, isKept) : seen,
        )
        return observations.every((seen, n) => seen === photo.observations[n])
          ? photo
          : { ...photo, observations }
      }),
    ),
}

function keptOrNot(seen: Observation, isKept: boolean): Observation {
  const { refinement } = seen
  if (!isKept) return refinement.kind === 'kept' ? { ...seen, refinement: { kind: 'none' } } : seen
  if (refinement.kind === 'kept') return seen
  return refinement.kind === 'refined'
    ? { ...seen, atPx: refinement.clickPx, sdPx: refinement.clickSdPx, refinement: { kind: 'kept' } }
    : { ...seen, refinement: { kind: 'kept' } }
}
