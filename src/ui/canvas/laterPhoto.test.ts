import { describe, expect, it } from 'vitest'
import { flatPlan, flatSlab } from '../../../tests/support/flatPlan'
import { click, key, playTool, toolScene } from '../../../tests/support/toolScene'
import { pxPoint } from '../../core/geometry'
import type { Plan } from '../../core/plan'
import { addLaterPhoto, placeMark, setOutline } from '../../state/commands'
import { handlesOf } from './handles'
import { datumTool } from './tools/datum/datumTool'
import { markTool } from './tools/mark/markTool'
import { selectTool } from './tools/select/selectTool'

const LATER = { slabId: 'slab', photoId: 'later' }

/** Half as large as the first photo, which shows 1 px to the mm with mark A at (500, 500). */
const MARKS = [
  { markId: 'a', atPx: pxPoint(100, 100) },
  { markId: 'b', atPx: pxPoint(1000, 100) },
  { markId: 'c', atPx: pxPoint(1000, 400) },
  { markId: 'd', atPx: pxPoint(100, 400) },
]

function planWith(marks: number): Plan {
  const photo = {
    id: 'later',
    hash: '1'.repeat(64),
    fileName: 'cleaned.jpg',
    mediaType: 'image/jpeg' as const,
    widthPx: 3000,
    heightPx: 2000,
    focalLength35mm: null,
    face: 'top' as const,
  }
  const added = addLaterPhoto.apply(flatPlan(flatSlab()), { slabId: 'slab', photo })
  return MARKS.slice(0, marks).reduce((plan, mark) => placeMark.apply(plan, { ...LATER, ...mark }), added)
}

const later = (marks: number, wish = {}) =>
  toolScene({ plan: planWith(marks), photoId: 'later', tool: 'mark', ...wish })

describe('a later photo on the canvas', () => {
  it('is looked at when it is chosen, and the first when the chosen one is gone', () => {
    expect(later(0).photo?.id).toBe('later')
    expect(toolScene({ plan: flatPlan(flatSlab()), photoId: 'later' }).photo?.id).toBe('photo')
  })

  it('sets the marks that the slab has already, one after the other, or the one that was chosen', () => {
    const tap = click([200, 180])
    const args = { ...LATER, atPx: [800, 720], sdPx: 4 }
    expect(playTool(markTool, later(1), tap).commands).toEqual([
      { name: 'placeMark', args: { ...args, markId: 'b' } },
    ])
    const chosen = later(1, { selection: { kind: 'mark', markId: 'd' } })
    expect(playTool(markTool, chosen, tap).commands).toEqual([
      { name: 'placeMark', args: { ...args, markId: 'd' } },
    ])
    expect(playTool(markTool, later(4), tap).commands).toEqual([
      { name: 'placeMark', args: { ...args, markId: 'new1' } },
    ])
  })

  it('loses a mark with Delete, and the slab keeps it', () => {
    const scene = later(4, { tool: 'select', selection: { kind: 'mark', markId: 'c' } })
    expect(playTool(selectTool, scene, [key('Delete')]).commands).toEqual([
      { name: 'unplaceMark', args: { ...LATER, markId: 'c' } },
    ])
  })

  it('shows no datum and takes none: the slab has its own on the first photo', () => {
    const scene = later(4, { tool: 'datum' })
    expect(handlesOf(scene).filter(({ kind }) => kind === 'datumEnd')).toEqual([])
    expect(playTool(datumTool, scene, [...click([200, 180]), ...click([400, 180])]).commands).toEqual([])
  })

  it('names the same wood as the first: 2 mm to the pixel, by hand', () => {
    const at = later(4).frames.slabFromWorld([550, 250])
    expect(at?.[0]).toBeCloseTo(900, 1)
    expect(at?.[1]).toBeCloseTo(300, 1)
    expect(later(3).frames.slabFromWorld([550, 250])).toBeNull()
  })

  it('carries its outline to the slab and leaves the older trace in the plan', () => {
    const ringPx = [pxPoint(20, 40), pxPoint(1080, 40), pxPoint(1080, 460), pxPoint(20, 460)]
    const plan = setOutline.apply(planWith(4), {
      ...LATER,
      traceId: 'clean',
      ringPx,
      origin: { kind: 'hand' },
    })
    const { slabResult, slab } = toolScene({ plan })
    const shape = slabResult?.shape
    // By hand: 1060 × 420 px at 2 mm.
    expect(shape?.state === 'ready' && shape.value.lengthMm).toBeCloseTo(2120, 0)
    expect(shape?.state === 'ready' && shape.value.widthMm).toBeCloseTo(840, 0)
    expect(slab?.capture.kind === 'photo' && slab.capture.traces.map(({ id }) => id)).toEqual([
      'outline',
      'clean',
    ])
  })
})
