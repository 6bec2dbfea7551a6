import { describe, expect, it } from 'vitest'
import { click, drag, key, playTool, press, release, toolScene } from '../../../../../tests/support/toolScene'
import { pxPoint } from '../../../../core/geometry'
import type { FollowedEdge } from '../../../../state/tracingStore'
import { traceTool } from './traceTool'

const tool = traceTool('void')
const ready = toolScene({ tool: 'void', followsEdge: true })
const edge: FollowedEdge = {
  meaning: 'void',
  acceptedPx: [pxPoint(400, 400), pxPoint(800, 400), pxPoint(800, 800)],
  livePx: [pxPoint(800, 800)],
}
const drawing = toolScene({ tool: 'void', followsEdge: true, tracing: { edge } })

describe('a line that clings to the edge', () => {
  it('begins where the first tap falls', () => {
    const { last } = playTool(tool, ready, click([50, 60]))
    expect(last.trace).toEqual([{ kind: 'start-edge', at: pxPoint(200, 240), before: [] }])
  })

  it('is led by a drag and pinned where it is let go, ahead of a finger', () => {
    const { steps } = playTool(tool, drawing, [
      press([50, 60], 'touch'),
      drag([190, 160]),
      release([190, 160]),
    ])
    expect(steps.map(({ trace }) => trace)).toEqual([
      [{ kind: 'lead-edge', at: pxPoint(200, 240) }],
      [{ kind: 'lead-edge', at: pxPoint(760, 448) }],
      [{ kind: 'pin-edge', at: pxPoint(760, 448) }],
    ])
  })

  it('closes by a tap on its first point or by Enter, and pins by Enter where the cross was moved', () => {
    expect(playTool(tool, drawing, click([101, 101])).last.trace).toEqual([{ kind: 'close-edge' }])
    expect(playTool(tool, drawing, [key('Enter')]).last.trace).toEqual([{ kind: 'close-edge' }])
    const pinned = playTool(tool, drawing, [key('Enter', { crosshair: [500, 700] })])
    expect(pinned.last.trace).toEqual([{ kind: 'pin-edge', at: pxPoint(500, 700) }])
  })

  it('does not close where it just began', () => {
    const short = { ...edge, acceptedPx: [pxPoint(400, 400), pxPoint(420, 400)] }
    const scene = toolScene({ tool: 'void', followsEdge: true, tracing: { edge: short } })
    expect(playTool(tool, scene, click([101, 101])).last.trace).toMatchObject([{ kind: 'pin-edge' }])
  })

  it('takes back stretch by stretch, and by Escape the whole line, which undo brings back', () => {
    expect(playTool(tool, drawing, [key('Backspace')]).last.trace).toEqual([{ kind: 'take-back-edge' }])
    expect(playTool(tool, drawing, [{ kind: 'takeBack' }]).last.trace).toEqual([{ kind: 'take-back-edge' }])
    const dropped = playTool(tool, drawing, [key('Escape')])
    expect(dropped.last.trace).toEqual([{ kind: 'drop-edge' }])
    const back = tool.step(dropped.state, { kind: 'takeBack' }, ready)
    expect(back.trace).toEqual([
      { kind: 'start-edge', at: pxPoint(800, 800), before: edge.acceptedPx.slice(0, 2) },
    ])
  })

  it('goes on from points that were set by hand', () => {
    const byHand = toolScene({ tool: 'void' })
    const { state } = playTool(tool, byHand, [...click([50, 60]), ...click([90, 60])])
    const { last } = playTool(tool, ready, click([120, 90]), state)
    expect(last.trace).toEqual([
      { kind: 'start-edge', at: pxPoint(360, 240), before: [pxPoint(200, 240)] },
      { kind: 'pin-edge', at: pxPoint(480, 360) },
    ])
  })

  it('leaves a line of another meaning alone', () => {
    const other = toolScene({
      tool: 'void',
      followsEdge: true,
      tracing: { edge: { ...edge, meaning: 'outline' } },
    })
    expect(playTool(tool, other, click([50, 60])).last.trace).toMatchObject([{ kind: 'start-edge' }])
  })
})
