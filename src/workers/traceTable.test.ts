import { describe, expect, it } from 'vitest'
import { paintedSlab } from '../../tests/support/paintedSlab'
import { pointToRingDistanceMm, pxPoint, ringAreaMm2, simplifyRing } from '../core/geometry'
import { SlabTracer, type Stroke } from '../core/trace'
import { pointsFromFlat } from './flatPoints'
import { JobCancelled } from './jobQueue'
import type { TraceAnswer, TraceTask } from './traceProtocol'
import { TraceTable } from './traceTable'

const { picture, edgePx } = paintedSlab()
const strokes: readonly Stroke[] = [{ kind: 'wood', fromPx: pxPoint(200, 300), toPx: pxPoint(700, 300) }]
const hash = 'a'
const bytes = new Blob([])

/** A table whose photo is twice as large as the picture that is traced. */
function bench(photoPxPerPx = 1) {
  let decoded = 0
  const table = new TraceTable(async () => {
    decoded++
    return { picture, photoPxPerPx }
  })
  const ask = (task: TraceTask): Promise<TraceAnswer> => table.perform(task, async () => undefined)
  return { table, ask, decodedCount: () => decoded }
}

const ringOf = (answer: TraceAnswer) => (answer.kind === 'outline' ? pointsFromFlat(answer.ringPx) : [])

describe('TraceTable', () => {
  it('answers what a direct call answers, thinned by half a pixel', async () => {
    const { ask } = bench()
    await ask({ kind: 'open', hash, bytes })
    const ring = ringOf(await ask({ kind: 'outline', hash, strokes }))
    const work = new SlabTracer(picture).outline(strokes)
    let turn = work.next()
    while (turn.done !== true) turn = work.next()
    expect(ring).toEqual(simplifyRing(turn.value.ringPx, 0.5))
    expect(ring.length).toBeLessThan(turn.value.ringPx.length / 2)
    expect(Math.abs(ringAreaMm2(ring) / ringAreaMm2(turn.value.ringPx) - 1)).toBeLessThan(0.001)
  })

  it('speaks of photo pixels, whatever the size of the copy that is traced', async () => {
    const { ask } = bench(2)
    await ask({ kind: 'open', hash, bytes })
    const large = strokes.map(({ kind, fromPx, toPx }) => ({
      kind,
      fromPx: pxPoint(fromPx[0] * 2, fromPx[1] * 2),
      toPx: pxPoint(toPx[0] * 2, toPx[1] * 2),
    }))
    const ring = ringOf(await ask({ kind: 'outline', hash, strokes: large }))
    const misses = ring.map(([x, y]) => pointToRingDistanceMm(pxPoint(x / 2, y / 2), edgePx))
    expect(misses.toSorted((a, b) => a - b)[Math.floor(misses.length / 2)]).toBeLessThan(3)
    const voids = await ask({ kind: 'voids', hash, outlinePx: ring })
    expect(voids.kind === 'voids' && voids.proposals[0]?.ringPx.some(([x]) => x > 900)).toBe(true)
  })

  it('keeps one photo: another takes its place, the same one is not decoded again', async () => {
    const { ask, decodedCount } = bench()
    await ask({ kind: 'open', hash, bytes })
    await ask({ kind: 'open', hash, bytes })
    expect(decodedCount()).toBe(1)
    await ask({ kind: 'open', hash: 'b', bytes })
    await expect(ask({ kind: 'outline', hash, strokes })).rejects.toMatchObject({
      problem: { code: 'photo-not-open' },
    })
  })

  it('follows a line step by step, and tells when it does not know it', async () => {
    const { ask } = bench()
    await ask({ kind: 'open', hash, bytes })
    const at = edgePx[40] ?? pxPoint(0, 0)
    const to = edgePx[200] ?? pxPoint(0, 0)
    await expect(
      ask({ kind: 'follow', hash, lineId: 'x', step: { kind: 'takeBack' } }),
    ).rejects.toMatchObject({ problem: { code: 'trace-line-lost' } })
    const begun = await ask({ kind: 'follow', hash, lineId: 'x', step: { kind: 'start', at } })
    expect(begun.kind === 'line' && pointsFromFlat(begun.added)).toEqual([at])
    const led = await ask({
      kind: 'follow',
      hash,
      lineId: 'x',
      step: { kind: 'move', at: to, isStraight: false },
    })
    expect(led).toMatchObject({ kind: 'line', kept: 1, added: new Float64Array() })
    const pinned = await ask({
      kind: 'follow',
      hash,
      lineId: 'x',
      step: { kind: 'pin', at: to, isStraight: false },
    })
    const accepted = pinned.kind === 'line' && pinned.kept === 1 ? pointsFromFlat(pinned.added) : []
    expect(accepted.length).toBeGreaterThan(100)
    expect(accepted.at(-1)).toEqual(to)
  })

  it('stops between two slices of work when it is told to', async () => {
    const { table, ask } = bench()
    await ask({ kind: 'open', hash, bytes })
    const stop = async (): Promise<void> => {
      throw new JobCancelled()
    }
    await expect(table.perform({ kind: 'outline', hash, strokes }, stop)).rejects.toThrow(JobCancelled)
  })
})
