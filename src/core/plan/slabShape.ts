import {
  type Region,
  regionsAreaMm2,
  type Ring,
  ringAreaMm2,
  ringBounds,
  type SlabPoint,
  subtractRegions,
} from '../geometry'
import type { SlabFrame } from '../photo'
import { cutBackOutline } from './cutBackOutline'
import { type Issue, issueOf } from './issue'
import { after, blockedBy, type Found, ready } from './part'
import type { SlabPlace, SlabShapeResult, SlabVoid } from './planResult'
import { ringOnSlab } from './ringOnSlab'
import type { Trace } from './schema'
import { voidOnSlab } from './voidOnSlab'

export interface ShapeInput {
  readonly slabId: string
  readonly thicknessMm: number | null
  readonly traces: readonly Trace[]
  readonly photoId: string
  readonly frame: SlabFrame
}

/** What the names of traces begin with: V1, C1, B1 … */
const LETTERS = { void: 'V', crack: 'C', bark: 'B', defect: 'D', figure: 'F' } as const

/** Outline, voids and places in the slab frame, from the traces on the photo. Rules: PLN-12, PLN-13. */
export function slabShape(input: ShapeInput): Found<SlabShapeResult> {
  const { slabId, frame } = input
  const traces = input.traces.filter((trace) => trace.photoId === input.photoId)
  const first = traces.find(({ meaning }) => meaning.kind === 'outline')
  if (first === undefined) return blockedBy([issueOf('outline-missing', 'blocker', ['slabs', slabId])])
  const traced = ringOnSlab(slabId, first, frame, 'outline')
  if (!traced.ok) return blockedBy([traced.issue])
  const cleaned = cutBackOutline(traced.ring, first, ['slabs', slabId, 'traces', first.id])
  const shape = after(cleaned.part, (outline) => {
    const found = placesWithin(input, traces, outline)
    const { voids, places } = found
    return ready(shapeOf(outline, voids, { tracedOutline: traced.ring, places }), found.issues)
  })
  return { part: shape.part, issues: [...cleaned.issues, ...shape.issues] }
}

interface Within {
  readonly voids: readonly SlabVoid[]
  readonly places: readonly SlabPlace[]
  readonly issues: readonly Issue[]
}

/** All that is traced within the outline, each kind numbered by itself in the order in which it was traced. */
function placesWithin(
  { slabId, thicknessMm, frame }: ShapeInput,
  traces: readonly Trace[],
  outline: Ring<SlabPoint>,
): Within {
  const voids: SlabVoid[] = []
  const places: SlabPlace[] = []
  const issues: Issue[] = []
  const counts = { void: 0, crack: 0, bark: 0, defect: 0, figure: 0 }
  for (const trace of traces) {
    const { kind } = trace.meaning
    if (kind === 'outline') continue
    const name = `${LETTERS[kind]}${++counts[kind]}`
    if (kind === 'defect' || kind === 'figure') {
      const found = ringOnSlab(slabId, trace, frame, 'void')
      if (!found.ok) issues.push(found.issue)
      else places.push({ traceId: trace.id, kind, name, ring: found.ring, areaMm2: ringAreaMm2(found.ring) })
      continue
    }
    const found = voidOnSlab(slabId, trace, { kind, name, thicknessMm, frame, outline })
    issues.push(...found.issues)
    if (found.slabVoid !== null) voids.push(found.slabVoid)
  }
  return { voids, places, issues }
}

/** The figures of an outline with its voids; also for slabs that were taped instead of photographed. */
export function shapeOf(
  outline: Ring<SlabPoint>,
  voids: readonly SlabVoid[],
  drawn: Pick<SlabShapeResult, 'tracedOutline' | 'places'> = { tracedOutline: outline, places: [] },
): SlabShapeResult {
  const whole: Region<SlabPoint> = { outer: outline, holes: [] }
  const wood = subtractRegions(
    [whole],
    voids.map(({ ring }) => ({ outer: ring, holes: [] })),
  )
  const { minX, minY, maxX, maxY } = ringBounds(outline)
  return {
    ...drawn,
    outline,
    voids,
    wood,
    grossAreaMm2: ringAreaMm2(outline),
    woodAreaMm2: regionsAreaMm2(wood),
    lengthMm: maxX - minX,
    widthMm: maxY - minY,
  }
}
