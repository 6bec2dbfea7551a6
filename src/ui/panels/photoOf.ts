import { useStore } from 'zustand'
import type { Photo, Slab, SlabResult, SlabScaleResult, Trace } from '../../core/plan'
import { sessionStore } from '../../state/sessionStore'
import { photoOf } from '../canvas/scene'
import { readyValue } from '../readyValue'

/** The photo of the slab that is looked at: the chosen one, else its first; null for a slab measured by stations. */
export function usePhotoOf(slab: Slab | null): Photo | null {
  const photoId = useStore(sessionStore, (session) => session.photoId)
  return photoOf(slab, { photoId })
}

export const isFirstPhoto = (slab: Slab, photo: Photo): boolean =>
  slab.capture.kind === 'photo' && slab.capture.photos[0]?.id === photo.id

/** How this photo of the slab sees it; null while that is not known. */
export function scaleOn(result: SlabResult | undefined, photoId: string): SlabScaleResult | null {
  return readyValue(result?.laterPhotos.get(photoId) ?? result?.scale)
}

export const tracesOf = (slab: Slab): readonly Trace[] =>
  slab.capture.kind === 'photo' ? slab.capture.traces : []
