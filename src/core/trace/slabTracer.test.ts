import { describe, expect, it } from 'vitest'
import { paintedSlab } from '../../../tests/support/paintedSlab'
import { isPointInRing, pointToRingDistanceMm, pxPoint, ringAreaMm2, type PxPoint } from '../geometry'
import type { Stroke } from './stroke'
import { SlabTracer } from './slabTracer'
import { voidProposals } from './voidProposals'

function finished<T>(work: Generator<number, T>): {
  readonly value: T
  readonly fractions: readonly number[]
} {
  const fractions: number[] = []
  for (;;) {
    const turn = work.next()
    if (turn.done === true) return { value: turn.value, fractions }
    fractions.push(turn.value)
  }
}

const stroke = (kind: Stroke['kind'], x0: number, y0: number, x1: number, y1: number): Stroke => ({
  kind,
  fromPx: pxPoint(x0, y0),
  toPx: pxPoint(x1, y1),
})

const ALONG = stroke('wood', 250, 250, 650, 250)
const FLOOR = stroke('not-wood', 300, 80, 500, 80)

const outlineOf = (tracer: SlabTracer, strokes: readonly Stroke[]): readonly PxPoint[] =>
  finished(tracer.outline(strokes)).value.ringPx

describe('SlabTracer', () => {
  it('TRC-4 puts the outline where the dark line along the edge ends', () => {
    const { picture, edgePx } = paintedSlab()
    const ring = outlineOf(new SlabTracer(picture), [ALONG])
    const distances = ring.map((place) => pointToRingDistanceMm(place, edgePx)).toSorted((a, b) => a - b)
    expect(distances[Math.floor(distances.length / 2)]).toBeLessThan(1)
    expect(distances[Math.floor(distances.length * 0.95)]).toBeLessThan(3)
    expect(Math.abs(ringAreaMm2(ring) / ringAreaMm2(edgePx) - 1)).toBeLessThan(0.008)
  })

  it('TRC-4 stands inside the edge when there is no dark line and the strokes say so', () => {
    const { picture } = paintedSlab()
    const inside = stroke('not-wood', 300, 185, 380, 185)
    const ring = outlineOf(new SlabTracer(picture), [ALONG, inside])
    expect(isPointInRing(pxPoint(340, 185), ring)).toBe(false)
  })

  it('TRC-1 depends on the strokes alone: all at once, one by one, or taken back and drawn again', () => {
    const { picture } = paintedSlab([150, 124, 96])
    const strokes = [ALONG, FLOOR, stroke('wood', 160, 330, 240, 330)]
    const atOnce = outlineOf(new SlabTracer(picture), strokes)
    const tracer = new SlabTracer(picture)
    for (let n = 1; n <= strokes.length; n++) outlineOf(tracer, strokes.slice(0, n))
    expect(outlineOf(tracer, strokes)).toEqual(atOnce)
    outlineOf(tracer, [ALONG, stroke('not-wood', 600, 540, 700, 540)])
    expect(outlineOf(tracer, strokes)).toEqual(atOnce)
  })

  it('TRC-3 leaves wood strokes inside and the others outside', () => {
    const { picture } = paintedSlab()
    const strokes = [ALONG, FLOOR, stroke('wood', 400, 400, 500, 420)]
    const ring = outlineOf(new SlabTracer(picture), strokes)
    for (const { kind, fromPx, toPx } of strokes) {
      expect([isPointInRing(fromPx, ring), isPointInRing(toPx, ring)]).toEqual([
        kind === 'wood',
        kind === 'wood',
      ])
    }
  })

  it('TRC-5 reports progress that never goes back, and has no outline without a stroke on wood', () => {
    const { picture } = paintedSlab()
    const tracer = new SlabTracer(picture)
    const { fractions } = finished(tracer.outline([ALONG, FLOOR]))
    expect(fractions.length).toBeGreaterThan(20)
    expect(fractions).toEqual(fractions.toSorted((a, b) => a - b))
    expect(outlineOf(tracer, [FLOOR])).toEqual([])
  })
})

describe('voidProposals', () => {
  it('TRC-6 proposes the dark hole, and not the dark line along the edge', () => {
    const { picture, edgePx, holePx } = paintedSlab()
    const { value } = finished(voidProposals(picture, edgePx))
    expect(value).toHaveLength(1)
    const [hole] = value
    expect(hole?.kind).toBe('void')
    const share = ringAreaMm2(hole?.ringPx ?? []) / ringAreaMm2(holePx)
    expect(share).toBeGreaterThan(0.9)
    expect(share).toBeLessThan(1.1)
  })
})
