import type { Photo } from '../../core/plan'
import { InvariantError } from '../../core/units'
import type { Command } from '../command'
import { kept, patched, withAdded, withoutItem, withPhoto, withPhotoCapture, withSlab } from '../planEdits'

interface AtPhoto {
  readonly slabId: string
  readonly photoId: string
}

/** One more photo of the slab: after cleaning, or of the other face. What is laid on the slab stays. */
export const addLaterPhoto: Command<{
  readonly slabId: string
  readonly photo: Omit<Photo, 'observations' | 'straightLines'>
}> = {
  name: 'addLaterPhoto',
  history: 'step',
  apply: (plan, { slabId, photo }) =>
    withSlab(plan, slabId, (slab) =>
      withPhotoCapture(slab, (capture) => ({
        ...capture,
        photos: withAdded(capture.photos, { ...photo, observations: [], straightLines: [] }, 'photo'),
      })),
    ),
}

/** Which face a later photo shows. The first one's is the top: the slab is seen from there. */
export const setPhotoFace: Command<AtPhoto & { readonly face: Photo['face'] }> = {
  name: 'setPhotoFace',
  history: 'step',
  apply: (plan, { slabId, photoId, face }) =>
    withSlab(plan, slabId, (slab) => withPhoto(slab, photoId, (photo) => patched(photo, { face }))),
}

/** What was traced on it goes with it. @throws InvariantError for the first photo: the slab's size hangs on it */
export const removeLaterPhoto: Command<AtPhoto> = {
  name: 'removeLaterPhoto',
  history: 'step',
  apply: (plan, { slabId, photoId }) =>
    withSlab(plan, slabId, (slab) =>
      withPhotoCapture(slab, (capture) => {
        if (capture.photos[0]?.id === photoId) throw new InvariantError('the first photo stays', { photoId })
        return {
          ...capture,
          photos: withoutItem(capture.photos, photoId, 'photo'),
          traces: kept(capture.traces, (trace) => trace.photoId !== photoId),
        }
      }),
    ),
}

/** Takes a mark off one photo; the slab keeps it, with its distances. */
export const unplaceMark: Command<AtPhoto & { readonly markId: string }> = {
  name: 'unplaceMark',
  history: 'step',
  apply: (plan, { slabId, photoId, markId }) =>
    withSlab(plan, slabId, (slab) =>
      withPhoto(slab, photoId, (photo) => ({
        ...photo,
        observations: kept(photo.observations, (seen) => seen.markId !== markId),
      })),
    ),
}
