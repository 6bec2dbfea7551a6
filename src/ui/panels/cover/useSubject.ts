import { useMemo } from 'react'
import type { CoverSubject, Option, Slab } from '../../../core/plan'
import { readyValue } from '../../readyValue'
import { usePlanResult } from '../../usePlanResult'

/** Slab and table as the searches are asked about them. */
export function useSubject(option: Option, slab: Slab | null): CoverSubject | null {
  const shape = readyValue(usePlanResult().slabs.get(slab?.id ?? '')?.shape)
  return useMemo(
    () => (slab === null || shape === null ? null : { option, slab, shape }),
    [option, slab, shape],
  )
}
