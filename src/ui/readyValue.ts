import type { Part } from '../core/plan'

/** The value of a part of the result, or null while it is blocked or pending. */
export const readyValue = <T>(part: Part<T> | undefined): T | null =>
  part?.state === 'ready' ? part.value : null
