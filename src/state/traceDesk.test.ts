import { afterEach, describe, expect, it, vi } from 'vitest'
import { pxPoint, type PxPoint } from '../core/geometry'
import type { Stroke } from '../core/trace'
import type { JobOptions } from '../workers'

interface Asked {
  readonly strokes: readonly Stroke[]
  readonly signal: AbortSignal | undefined
  readonly answer: (ring: readonly PxPoint[]) => void
  readonly fail: (reason: unknown) => void
}

const asked: Asked[] = []

/** Stands in for the worker: answers when the test says so. */
class FakeClient {
  outline(_photo: unknown, strokes: readonly Stroke[], options?: JobOptions): Promise<readonly PxPoint[]> {
    return new Promise((answer, fail) => {
      options?.signal?.addEventListener('abort', () => fail(new DOMException('stopped', 'AbortError')))
      asked.push({ strokes, signal: options?.signal, answer, fail })
    })
  }
}

vi.mock('../workers', async (load) => ({ ...(await load<object>()), TraceClient: FakeClient }))

const desk = await import('./traceDesk')
const { tracingStore, tracingOn, NO_TRACING } = await import('./tracingStore')
const { jobStore } = await import('./jobStore')

const PHOTO = { slabId: 's', photoId: 'p', hash: 'h' }
const wood: Stroke = { kind: 'wood', fromPx: pxPoint(1, 1), toPx: pxPoint(9, 1) }
const RING = [pxPoint(0, 0), pxPoint(9, 0), pxPoint(9, 9)]
const OTHER = [pxPoint(0, 0), pxPoint(8, 0), pxPoint(8, 8)]
const settled = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0))
const last = (): Asked => {
  const found = asked.at(-1)
  if (found === undefined) throw new Error('nothing was asked')
  return found
}

afterEach(() => {
  desk.forgetStrokes()
  asked.length = 0
})

describe('the desk of the tracing worker', () => {
  it('asks with all strokes in order, and shows what the last ones mean', async () => {
    desk.addStroke(PHOTO, wood)
    desk.addStroke(PHOTO, { ...wood, kind: 'not-wood' })
    expect(last().strokes.map(({ kind }) => kind)).toEqual(['wood', 'not-wood'])
    asked[0]?.answer(OTHER)
    await settled()
    expect(tracingStore.getState()).toMatchObject({ outlinePx: null, isFindingOutline: true })
    last().answer(RING)
    await settled()
    expect(tracingStore.getState()).toMatchObject({ outlinePx: RING, isFindingOutline: false })
  })

  it('goes back by Cancel to what was found before', async () => {
    desk.addStroke(PHOTO, wood)
    last().answer(RING)
    await settled()
    vi.useFakeTimers()
    desk.addStroke(PHOTO, { ...wood, kind: 'not-wood' })
    expect(jobStore.getState().jobs).toEqual([])
    vi.advanceTimersByTime(501)
    expect(jobStore.getState().jobs).toHaveLength(1)
    vi.useRealTimers()
    jobStore.getState().jobs[0]?.cancel()
    await settled()
    expect(tracingStore.getState()).toMatchObject({
      strokes: [wood],
      outlinePx: RING,
      isFindingOutline: false,
    })
    expect(jobStore.getState().jobs).toEqual([])
  })

  it('takes strokes back one by one, and forgets an answer to what was let go', async () => {
    desk.addStroke(PHOTO, wood)
    const { answer } = last()
    desk.forgetStrokes()
    answer(RING)
    await settled()
    expect(tracingStore.getState()).toMatchObject({ strokes: [], outlinePx: null })
    expect(desk.takeBackStroke()).toBe(false)
    desk.addStroke(PHOTO, wood)
    expect(desk.takeBackStroke()).toBe(true)
    expect(last().strokes).toEqual([])
  })

  it('shows nothing of one photo on another', async () => {
    desk.addStroke(PHOTO, wood)
    expect(tracingOn(tracingStore.getState(), 'other')).toBe(NO_TRACING)
    desk.lookAtPhoto({ ...PHOTO, photoId: 'other' })
    expect(tracingStore.getState().strokes).toEqual([])
  })
})
