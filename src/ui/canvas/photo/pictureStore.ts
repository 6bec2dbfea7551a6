import { createStore } from 'zustand/vanilla'
import type { Bounds } from '../../../core/geometry'

/** A bitmap and the part of the world that it shows (photo px, or mm in the slab frame). */
export interface Picture {
  readonly bitmap: ImageBitmap
  readonly area: Bounds
}

/** The bitmaps at hand for the photo that is shown. */
export interface Pictures {
  readonly hash: string | null
  readonly status: 'none' | 'opening' | 'ready' | 'lost'
  /** The whole photo, small, at once. */
  readonly preview: Picture | null
  /** What is on screen, sharp, once the view has come to rest. */
  readonly sharp: Picture | null
  /** Round the loupe. */
  readonly loupe: Picture | null
  /** The slab from straight above, whole and small, and what is on screen, sharp. */
  readonly above: Picture | null
  readonly aboveSharp: Picture | null
}

type Slot = 'preview' | 'sharp' | 'loupe' | 'above' | 'aboveSharp'

const NOTHING: Pictures = {
  hash: null,
  status: 'none',
  preview: null,
  sharp: null,
  loupe: null,
  above: null,
  aboveSharp: null,
}

export const pictureStore = createStore<Pictures>(() => NOTHING)

/** Puts a bitmap in its slot and frees the one before. Ignored when another photo is shown by now. */
export function putPicture(hash: string, slot: Slot, picture: Picture | null): void {
  const state = pictureStore.getState()
  if (state.hash !== hash) {
    picture?.bitmap.close()
    return
  }
  const before = state[slot]
  pictureStore.setState({ [slot]: picture })
  closeLater(before)
}

/** Turns to another photo: all bitmaps of the one before are freed. */
export function showPhoto(hash: string | null): void {
  const before = pictureStore.getState()
  pictureStore.setState({ ...NOTHING, hash, status: hash === null ? 'none' : 'opening' })
  for (const slot of ['preview', 'sharp', 'loupe', 'above', 'aboveSharp'] as const) closeLater(before[slot])
}

export const setStatus = (hash: string, status: Pictures['status']): void => {
  if (pictureStore.getState().hash === hash) pictureStore.setState({ status })
}

/** A layer may draw the old bitmap once more before it hears of the new one: drawing a closed one would throw. */
function closeLater(picture: Picture | null): void {
  if (picture) setTimeout(() => picture.bitmap.close(), 1000)
}
