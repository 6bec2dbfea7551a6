import { describe, expect, it } from 'vitest'
import { flatPlan, flatSlab } from '../../../../../tests/support/flatPlan'
import {
  click,
  drag,
  key,
  KEY_UP,
  playTool,
  press,
  release,
  tap,
  toolScene,
} from '../../../../../tests/support/toolScene'
import type { Slab } from '../../../../core/plan'
import { traceTool } from './traceTool'

const outlineTool = traceTool('outline')
const voidTool = traceTool('void')

/** The flat slab before anything was traced. */
function untraced(): Slab {
  const slab = flatSlab()
  return slab.capture.kind === 'photo' ? { ...slab, capture: { ...slab.capture, traces: [] } } : slab
}

const bare = () => toolScene({ plan: flatPlan(untraced()), tool: 'outline' })
const corners = [
  [100, 100],
  [300, 100],
  [300, 250],
  [100, 250],
] as const
const ring = [
  [400, 400],
  [1200, 400],
  [1200, 1000],
  [400, 1000],
]
const taps = corners.flatMap((corner) => click(corner))
const outline = {
  name: 'addTrace',
  args: { slabId: 'slab', photoId: 'photo', traceId: 'new1', meaning: { kind: 'outline' }, ringPx: ring },
}

describe('traceTool', () => {
  it('closes the ring by Enter, as one command', () => {
    const { commands, last, state } = playTool(outlineTool, bare(), [...taps, key('Enter')])
    expect(commands).toEqual([outline])
    expect(last.select).toEqual({ kind: 'trace', traceId: 'new1', point: null })
    expect(last.say).toEqual({ kind: 'trace-closed', meaning: 'outline', points: 4 })
    expect(outlineTool.unfinished(state)).toEqual([])
  })

  it('closes it by a tap on the first point, and adds no point there', () => {
    expect(playTool(outlineTool, bare(), [...taps, ...click([107, 104])]).commands).toEqual([outline])
  })

  it('says that three points are needed, and keeps the two', () => {
    const { commands, last, state } = playTool(outlineTool, bare(), [...taps.slice(0, 4), key('Enter')])
    expect(commands).toEqual([])
    expect(last.say).toEqual({ kind: 'points-missing', placed: 2 })
    expect(outlineTool.unfinished(state)).toHaveLength(2)
  })

  it('takes back the last point by Backspace and by undo', () => {
    const { state } = playTool(outlineTool, bare(), [...taps, key('Backspace'), { kind: 'takeBack' }])
    expect(outlineTool.unfinished(state)).toEqual(ring.slice(0, 2))
    const none = playTool(outlineTool, bare(), [{ kind: 'takeBack' }])
    expect(none.last.unused).toBe(true)
  })

  it('backs out one level at a time by Escape: the press, the ring; undo brings the ring back', () => {
    const pressed = playTool(outlineTool, bare(), [
      ...taps,
      press([200, 400]),
      key('Escape'),
      release([200, 400]),
    ])
    expect(outlineTool.unfinished(pressed.state)).toEqual(ring)
    const dropped = playTool(outlineTool, bare(), [...taps, key('Escape')])
    expect(outlineTool.unfinished(dropped.state)).toEqual([])
    const back = playTool(outlineTool, bare(), [{ kind: 'takeBack' }], dropped.state)
    expect(outlineTool.unfinished(back.state)).toEqual(ring)
    expect(playTool(outlineTool, bare(), [key('Escape')]).last.unused).toBe(true)
  })

  it('drags a point that is set already, before the ring is closed', () => {
    const { state } = playTool(outlineTool, bare(), [
      ...taps,
      press([300, 100]),
      drag([320, 110]),
      release([320, 110]),
    ])
    expect(outlineTool.unfinished(state)).toEqual([ring[0], [1280, 440], ring[2], ring[3]])
  })

  it('sets points close to the last one: only a press right on a point grabs it', () => {
    const { state } = playTool(outlineTool, bare(), [...taps, ...click([108, 250])])
    expect(outlineTool.unfinished(state)).toHaveLength(5)
  })

  it('does not draw while two fingers pinch', () => {
    const { state, commands } = playTool(outlineTool, bare(), [
      ...taps,
      press([200, 300], 'touch'),
      { kind: 'abandon' },
    ])
    expect(outlineTool.unfinished(state)).toEqual(ring)
    expect(commands).toEqual([])
  })

  it('traces by keys alone: Enter sets the cross’s point, Enter once more closes', () => {
    const { commands } = playTool(outlineTool, bare(), [
      key('Enter', { crosshair: [400, 400] }),
      key('Enter', { crosshair: [1200, 400] }),
      key('Enter', { crosshair: [1200, 1000] }),
      key('Enter', { crosshair: [400, 1000] }),
      key('Enter'),
    ])
    expect(commands).toEqual([outline])
  })

  it('moves a point of a ring that is there', () => {
    // the flat outline's first point: (−200, −150) mm, photo px (300, 350), screen (75, 87.5)
    const { commands } = playTool(outlineTool, toolScene({ tool: 'outline' }), [
      press([75, 87.5]),
      drag([85, 97.5]),
      release([85, 97.5]),
    ])
    expect(commands).toEqual([
      { name: 'moveTracePoint', args: { slabId: 'slab', traceId: 'outline', index: 0, atPx: [340, 390] } },
    ])
  })

  it('puts a point in by a tap on an edge, and can drag it on at once', () => {
    // the upper edge runs from screen (75, 87.5) to (625, 87.5)
    const tapped = playTool(outlineTool, toolScene({ tool: 'outline' }), click([300, 90]))
    expect(tapped.commands).toEqual([
      { name: 'insertTracePoint', args: { slabId: 'slab', traceId: 'outline', index: 1, atPx: [1200, 360] } },
    ])
    const dragged = playTool(outlineTool, toolScene({ tool: 'outline' }), [
      press([300, 90]),
      drag([300, 130]),
      release([300, 130]),
    ])
    expect(dragged.commands).toEqual([
      { name: 'insertTracePoint', args: { slabId: 'slab', traceId: 'outline', index: 1, atPx: [1200, 520] } },
    ])
  })

  it('takes the selected point out by the delete key, and moves it by arrows', () => {
    const selection = { kind: 'trace', traceId: 'outline', point: 2 } as const
    const scene = toolScene({ tool: 'outline', selection })
    expect(playTool(outlineTool, scene, [key('Delete')]).commands).toEqual([
      { name: 'deleteTracePoint', args: { slabId: 'slab', traceId: 'outline', index: 2 } },
    ])
    // its third point: (2000, 750) mm, photo px (2500, 1250)
    expect(playTool(outlineTool, scene, [key('ArrowLeft', { shift: true }), KEY_UP]).commands).toEqual([
      { name: 'moveTracePoint', args: { slabId: 'slab', traceId: 'outline', index: 2, atPx: [2490, 1250] } },
    ])
  })

  it('starts no second outline, and says so', () => {
    const scene = toolScene({ tool: 'outline' })
    expect(playTool(outlineTool, scene, [press([300, 200])]).last.taken).toBe(false)
    expect(playTool(outlineTool, scene, [tap([300, 200])]).last.say).toEqual({ kind: 'outline-exists' })
    const byKeys = playTool(outlineTool, scene, [key('Enter', { crosshair: [1200, 800] })])
    expect(byKeys.last.say).toEqual({ kind: 'outline-exists' })
  })

  it('traces voids through the slab, as many as there are, and leaves the outline alone', () => {
    const scene = toolScene({ tool: 'void' })
    const { commands } = playTool(voidTool, scene, [
      ...click([75, 87.5]),
      ...click([200, 150]),
      ...click([220, 150]),
      ...click([220, 180]),
      key('Enter'),
    ])
    expect(commands).toEqual([
      {
        name: 'addTrace',
        args: {
          slabId: 'slab',
          photoId: 'photo',
          traceId: 'new1',
          meaning: { kind: 'void', depth: { kind: 'through' } },
          ringPx: [
            [300, 350],
            [800, 600],
            [880, 600],
            [880, 720],
          ],
        },
      },
    ])
  })
})
