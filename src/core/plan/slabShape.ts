import {
  intersectRegions,
  isPointInRing,
  normaliseOutline,
  type Region,
  regionsAreaMm2,
  type Ring,
  ringAreaMm2,
  ringBounds,
  type SlabPoint,
  subtractRegions,
} from '../geometry'
import { type SlabFrame, slabPointFromPx } from '../photo'
import { type Issue, type IssueCode, issueOf, type PlanPath } from './issue'
import { blockedBy, type Found, ready } from './part'
import type { SlabShapeResult, SlabVoid } from './planResult'
import type { Trace } from './schema'

export interface ShapeInput {
  readonly slabId: string
  readonly thicknessMm: number
  readonly traces: readonly Trace[]
  readonly photoId: string
  readonly frame: SlabFrame
}

/** Outline and voids in the slab frame, from the traces on the photo. */
export function slabShape({
  slabId,
  thicknessMm,
  traces,
  photoId,
  frame,
}: ShapeInput): Found<SlabShapeResult> {
  const ofPhoto = traces.filter((trace) => trace.photoId === photoId)
  const first = ofPhoto.find(({ meaning }) => meaning.kind === 'outline')
  if (first === undefined) return blockedBy([issueOf('outline-missing', 'blocker', ['slabs', slabId])])
  const outline = ringOnSlab(slabId, first, frame, 'outline')
  if (!outline.ok) return blockedBy([outline.issue])
  const issues: Issue[] = []
  const voids: SlabVoid[] = []
  ofPhoto.forEach((trace) => {
    if (trace.meaning.kind !== 'void') return
    const name = `V${voids.length + 1}`
    const found = voidOnSlab(slabId, trace, { name, thicknessMm, frame, outline: outline.ring })
    issues.push(...found.issues)
    if (found.slabVoid !== null) voids.push(found.slabVoid)
  })
  return ready(shapeOf(outline.ring, voids), issues)
}

/** The figures of an outline with its voids; also for slabs that were taped instead of photographed. */
export function shapeOf(outline: Ring<SlabPoint>, voids: readonly SlabVoid[]): SlabShapeResult {
  const whole: Region<SlabPoint> = { outer: outline, holes: [] }
  const wood = subtractRegions(
    [whole],
    voids.map(({ ring }) => ({ outer: ring, holes: [] })),
  )
  const { minX, minY, maxX, maxY } = ringBounds(outline)
  return {
    outline,
    voids,
    wood,
    grossAreaMm2: ringAreaMm2(outline),
    woodAreaMm2: regionsAreaMm2(wood),
    lengthMm: maxX - minX,
    widthMm: maxY - minY,
  }
}

type RingOnSlab =
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

function ringOnSlab(
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
  return { ok: false, issue: issueOf(code, severity, at, normal.problem.values) }
}

interface VoidContext {
  readonly name: string
  readonly thicknessMm: number
  readonly frame: SlabFrame
  readonly outline: Ring<SlabPoint>
}

function voidOnSlab(
  slabId: string,
  trace: Trace,
  { name, thicknessMm, frame, outline }: VoidContext,
): { readonly slabVoid: SlabVoid | null; readonly issues: readonly Issue[] } {
  const at: PlanPath = ['slabs', slabId, 'traces', trace.id]
  const found = ringOnSlab(slabId, trace, frame, 'void')
  if (!found.ok) return { slabVoid: null, issues: [found.issue] }
  const inside = intersectRegions([{ outer: found.ring, holes: [] }], [{ outer: outline, holes: [] }])
  if (inside.length === 0 && !found.ring.some((point) => isPointInRing(point, outline))) {
    return { slabVoid: null, issues: [issueOf('void-outside-slab', 'warning', at, { traceName: name })] }
  }
  const depth = trace.meaning.kind === 'void' ? trace.meaning.depth : { kind: 'through' as const }
  const tooDeep = depth.kind === 'partial' && depth.depthMm > thicknessMm
  const issues =
    depth.kind === 'partial' && tooDeep
      ? [
          issueOf('void-deeper-than-slab', 'warning', at, {
            traceName: name,
            depthMm: depth.depthMm,
            thicknessMm,
          }),
        ]
      : []
  const through = depth.kind === 'through' || tooDeep
  return {
    slabVoid: {
      traceId: trace.id,
      name,
      ring: found.ring,
      areaMm2: ringAreaMm2(found.ring),
      depthMm: depth.kind === 'partial' && !tooDeep ? depth.depthMm : thicknessMm,
      through,
    },
    issues,
  }
}
