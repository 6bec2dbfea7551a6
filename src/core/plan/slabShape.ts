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
import { type Issue, issueOf } from './issue'
import { blockedBy, type Found, ready } from './part'
import type { SlabShapeResult, SlabVoid } from './planResult'
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
