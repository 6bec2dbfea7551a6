import { normaliseOutline, type Ring, type SlabPoint } from '../geometry'
import { type SlabFrame, slabPointFromPx } from '../photo'
import { type Issue, type IssueCode, issueOf, type PlanPath } from './issue'
import type { Trace } from './schema'

export type RingOnSlab =
  { readonly ok: true; readonly ring: Ring<SlabPoint> } | { readonly ok: false; readonly issue: Issue }

const RING_ISSUES = {
  outline: {
    'ring-too-few-points': 'outline-too-few-points',
    'ring-crosses-itself': 'outline-crosses-itself',
    'ring-no-area': 'outline-no-area',
  },
  void: {
    'ring-too-few-points': 'void-too-few-points',
    'ring-crosses-itself': 'void-crosses-itself',
    'ring-no-area': 'void-no-area',
  },
} as const satisfies Record<string, Record<string, IssueCode>>

/** A trace laid on the slab's face, or why it cannot be an outline there. */
export function ringOnSlab(
  slabId: string,
  trace: Trace,
  frame: SlabFrame,
  what: keyof typeof RING_ISSUES,
): RingOnSlab {
  const severity = what === 'outline' ? 'blocker' : 'warning'
  const at: PlanPath = ['slabs', slabId, 'traces', trace.id]
  const points = trace.ringPx.map((px) => slabPointFromPx(frame, px))
  // A pixel above the horizon of the slab's plane shows no place on it.
  if (!points.flat().every(Number.isFinite))
    return { ok: false, issue: issueOf('outline-beyond-horizon', severity, at) }
  const normal = normaliseOutline(points)
  if (normal.ok) return { ok: true, ring: normal.value }
  const codes: Readonly<Record<string, IssueCode>> = RING_ISSUES[what]
  const code = codes[normal.problem.code] ?? RING_ISSUES[what]['ring-no-area']
  return { ok: false, issue: issueOf(code, severity, at, pointNumbers(normal.problem.values)) }
}

/** Edges are counted from 0 in the ring; a maker counts points from 1. */
function pointNumbers(values: Issue['values']): Issue['values'] {
  return Object.fromEntries(
    Object.entries(values).map(([name, value]) => [name, typeof value === 'number' ? value + 1 : value]),
  )
}
