import type { Photo, Slab, Trace } from '../../core/plan'

/** The photo that is worked on: the slab's first; null for a slab measured by stations. */
export function photoOf(slab: Slab): Photo | null {
  return slab.capture.kind === 'photo' ? (slab.capture.photos[0] ?? null) : null
}

export const tracesOf = (slab: Slab): readonly Trace[] =>
  slab.capture.kind === 'photo' ? slab.capture.traces : []
