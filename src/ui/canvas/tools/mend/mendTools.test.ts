import { describe, expect, it } from 'vitest'
import { flatBox, flatPlan, flatSlab } from '../../../../../tests/support/flatPlan'
import { click, drag, key, playTool, press, release, toolScene } from '../../../../../tests/support/toolScene'
import { type PxPoint, pxPoint, ringAreaMm2 } from '../../../../core/geometry'
import type { FollowedEdge } from '../../../../state/tracingStore'
import type { Played } from '../../../../../tests/support/toolScene'
import { pushTool } from './pushTool'
import { redrawTool } from './redrawTool'
import { stretchTool } from './stretchTool'

/** A square of 1600 × 1200 photo px: on the screen (50, 50) to (450, 350). */
const square = flatBoxPx(200, 200, 1800, 1400)

function flatBoxPx(x0: number, y0: number, x1: number, y1: number): readonly PxPoint[] {
  return [pxPoint(x0, y0), pxPoint(x1, y0), pxPoint(x1, y1), pxPoint(x0, y1)]
}

const plan = flatPlan(
  flatSlab({ outline: square, voids: [{ ring: flatBox(500, 200, 600, 300), depthMm: null }] }),
)
const scene = toolScene({ plan, tool: 'push' })

function ringAfter<State>({ commands }: Played<State>): readonly PxPoint[] {
  const [command] = commands
  if (command?.name !== 'replaceTraceRing') throw new Error('no ring')
  expect(command.args.traceId).toBe('outline')
  return command.args.ringPx
}

const nearest = (ring: readonly PxPoint[], [x, y]: PxPoint): number =>
  Math.min(...ring.map(([u, v]) => Math.hypot(u - x, v - y)))

describe('pushTool', () => {
  it('pushes the edge under it along, in one command, and leaves what is out of reach', () => {
    const played = playTool(pushTool, scene, [
      press([250, 50]),
      drag([250, 60]),
      drag([250, 70]),
      release([250, 70]),
    ])
    expect(played.commands).toHaveLength(1)
    expect(played.steps[1]?.draft?.name).toBe('replaceTraceRing')
    const ring = ringAfter(played)
    expect(nearest(ring, pxPoint(1000, 280))).toBeLessThan(15)
    for (const corner of square) expect(nearest(ring, corner)).toBe(0)
    expect(Math.abs(ringAreaMm2(ring))).toBeLessThan(1600 * 1200)
  })

  it('moves the picture beside every edge, and does nothing on Escape or a second finger', () => {
    expect(playTool(pushTool, scene, [press([120, 280])]).last.taken).toBe(false)
    for (const stop of [key('Escape'), { kind: 'abandon' } as const]) {
      const { last, commands } = playTool(pushTool, scene, [press([250, 50]), drag([250, 60]), stop])
      expect(last).toEqual({ state: null, draft: null })
      expect(commands).toEqual([])
    }
  })

  it('changes its size by square brackets', () => {
    expect(pushTool.step(null, key(']'), scene).trace).toEqual([{ kind: 'push-size', factor: 1.25 }])
    expect(pushTool.step(null, key('['), scene).trace).toEqual([{ kind: 'push-size', factor: 0.8 }])
  })
})

describe('stretchTool', () => {
  it('draws the shorter way between two taps straight', () => {
    const played = playTool(stretchTool('straighten'), scene, [...click([350, 50]), ...click([450, 150])])
    const ring = ringAfter(played)
    expect(nearest(ring, pxPoint(1800, 200))).toBeGreaterThan(100)
    expect(Math.abs(ringAreaMm2(ring))).toBeCloseTo(1600 * 1200 - (400 * 400) / 2, -1)
  })

  it('smooths a corner between two taps, the ends where they were', () => {
    const ring = ringAfter(
      playTool(stretchTool('smooth'), scene, [...click([350, 50]), ...click([450, 150])]),
    )
    expect(nearest(ring, pxPoint(1800, 200))).toBeGreaterThan(3)
    expect(nearest(ring, pxPoint(1400, 200))).toBeLessThan(1)
    expect(nearest(ring, pxPoint(200, 1400))).toBe(0)
  })

  it('wants both taps on one line, by pointer or by keys, and lets go on Escape', () => {
    const tool = stretchTool('smooth')
    expect(playTool(tool, scene, click([120, 280])).last.say).toEqual({ kind: 'edge-missed' })
    const begun = playTool(tool, scene, [key('Enter', { crosshair: [1000, 200] })])
    expect(begun.last.say).toEqual({ kind: 'stretch-begun' })
    expect(tool.step(begun.state, key('Escape'), scene).state.from).toBeNull()
    expect(tool.step(tool.idle, key('Escape'), scene).unused).toBe(true)
  })
})

describe('redrawTool', () => {
  const edge: FollowedEdge = {
    meaning: 'redraw',
    acceptedPx: [pxPoint(400, 200)],
    livePx: [pxPoint(400, 200)],
  }
  const drawing = toolScene({ plan, tool: 'redraw', tracing: { edge } })

  it('begins on a line, pins beside it, and ends on it again', () => {
    const begun = playTool(redrawTool, scene, click([100, 50]))
    expect(begun.last.trace).toEqual([{ kind: 'start-edge', at: pxPoint(400, 200), before: [] }])
    const beside = playTool(redrawTool, drawing, click([150, 100]), begun.state)
    expect(beside.last.trace).toEqual([{ kind: 'pin-edge', at: pxPoint(600, 400) }])
    const ended = playTool(redrawTool, drawing, click([200, 50]), beside.state)
    expect(ended.last.trace).toEqual([{ kind: 'redraw-edge', at: pxPoint(800, 200), traceId: 'outline' }])
  })

  it('takes back by Backspace, lets go by Escape, and misses beside every line', () => {
    const begun = playTool(redrawTool, scene, click([100, 50])).state
    expect(redrawTool.step(begun, key('Backspace'), drawing).trace).toEqual([{ kind: 'take-back-edge' }])
    expect(redrawTool.step(begun, key('Escape'), drawing).trace).toEqual([{ kind: 'drop-edge' }])
    expect(playTool(redrawTool, scene, click([120, 280])).last.say).toEqual({ kind: 'edge-missed' })
  })
})
