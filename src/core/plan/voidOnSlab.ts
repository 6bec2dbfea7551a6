import { intersectRegions, isPointInRing, type Ring, ringAreaMm2, type SlabPoint } from '../geometry'
import type { SlabFrame } from '../photo'
import { type Issue, issueOf, type PlanPath } from './issue'
import type { SlabVoid } from './planResult'
import { ringOnSlab } from './ringOnSlab'
import type { Trace } from './schema'

export interface VoidContext {
  readonly kind: SlabVoid['kind']
  readonly name: string
  readonly thicknessMm: number | null
  readonly frame: SlabFrame
  readonly outline: Ring<SlabPoint>
}

/** A void in the slab frame, and what there is to say about it; null where it cannot be one. */
export function voidOnSlab(
  slabId: string,
  trace: Trace,
  { kind, name, thicknessMm, frame, outline }: VoidContext,
): { readonly slabVoid: SlabVoid | null; readonly issues: readonly Issue[] } {
  const at: PlanPath = ['slabs', slabId, 'traces', trace.id]
  const found = ringOnSlab(slabId, trace, frame, 'void')
  if (!found.ok) return { slabVoid: null, issues: [found.issue] }
  const inside = intersectRegions([{ outer: found.ring, holes: [] }], [{ outer: outline, holes: [] }])
  if (inside.length === 0 && !found.ring.some((point) => isPointInRing(point, outline))) {
    return { slabVoid: null, issues: [issueOf('void-outside-slab', 'warning', at, { traceName: name })] }
  }
  const { depthMm, issues } = voidDepth(trace, at, { name, thicknessMm })
  return {
    slabVoid: { traceId: trace.id, kind, name, ring: found.ring, areaMm2: ringAreaMm2(found.ring), depthMm },
    issues,
  }
}

/**
 * Depth of a void that does not go through; null for one that does, or that is said to be deeper than the slab. While
 * the slab's thickness is not known, what was said stands.
 */
function voidDepth(
  { meaning }: Trace,
  at: PlanPath,
  { name, thicknessMm }: Pick<VoidContext, 'name' | 'thicknessMm'>,
): { readonly depthMm: number | null; readonly issues: readonly Issue[] } {
  if ((meaning.kind !== 'void' && meaning.kind !== 'crack') || meaning.depth.kind === 'through')
    return { depthMm: null, issues: [] }
  const { depthMm } = meaning.depth
  if (thicknessMm === null || depthMm <= thicknessMm) return { depthMm, issues: [] }
  const values = { traceName: name, depthMm, thicknessMm }
  return { depthMm: null, issues: [issueOf('void-deeper-than-slab', 'warning', at, values)] }
}
