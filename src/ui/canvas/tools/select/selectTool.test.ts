import { describe, expect, it } from 'vitest'
import {
  drag,
  key,
  KEY_UP,
  playTool,
  press,
  release,
  tap,
  toolScene,
} from '../../../../../tests/support/toolScene'
import { selectTool } from './selectTool'

const photo = toolScene({ view: 'photo' })
// From above, slab mm: screen (100 + x/4, 100 + y/4).
const camera = { scale: 0.25, x: 100, y: 100 }
const above = toolScene({ view: 'above', camera })

describe('selectTool', () => {
  it('selects a mark by a tap, and nothing by a tap beside everything', () => {
    expect(playTool(selectTool, photo, [tap([126, 126])]).last.select).toEqual({ kind: 'mark', markId: 'a' })
    const selected = toolScene({ selection: { kind: 'mark', markId: 'a' } })
    expect(playTool(selectTool, selected, [tap([20, 20])]).last).toMatchObject({
      select: null,
      say: { kind: 'nothing-selected' },
    })
    expect(playTool(selectTool, photo, [tap([20, 20])]).last.select).toBeUndefined()
  })

  it('selects a trace by a tap on its line; its points can be dragged only then', () => {
    // upper edge of the outline: photo y 350, screen y 87.5; its first point at screen (75, 87.5)
    expect(playTool(selectTool, photo, [tap([300, 90])]).last.select).toEqual({
      kind: 'trace',
      traceId: 'outline',
      point: null,
    })
    expect(playTool(selectTool, photo, [press([75, 87.5])]).last.taken).toBe(false)
    const open = toolScene({ selection: { kind: 'trace', traceId: 'outline', point: null } })
    const { commands } = playTool(selectTool, open, [press([75, 87.5]), drag([75, 95]), release([75, 95])])
    expect(commands).toEqual([
      { name: 'moveTracePoint', args: { slabId: 'slab', traceId: 'outline', index: 0, atPx: [300, 380] } },
    ])
  })

  it('selects the table where it is tapped, and drags it only once it is selected', () => {
    const inTable = [320, 170] as const
    expect(playTool(selectTool, above, [tap(inTable)]).last.select).toEqual({ kind: 'footprint' })
    expect(playTool(selectTool, above, [press(inTable)]).last.taken).toBe(false)
    const selected = toolScene({ view: 'above', camera, selection: { kind: 'footprint' } })
    const { commands } = playTool(selectTool, selected, [
      press(inTable),
      drag([330, 165]),
      release([330, 165]),
    ])
    // by hand: 10 and −5 screen px are 40 and −20 mm
    expect(commands).toEqual([
      {
        name: 'layFootprint',
        args: {
          optionId: 'option',
          slabId: 'slab',
          pose: { xMm: -60, yMm: -120, angleRad: 0, turnedOver: false },
        },
      },
    ])
  })

  it('selects a cut by a tap on its line', () => {
    // the table lies from −100 to 1900 mm: the first cut, at its start, crosses the slab at x = −100, screen x = 75
    const { select } = playTool(selectTool, above, [tap([75, 120])]).last
    expect(select).toEqual({ kind: 'cut', cutId: 'cut-start' })
  })

  it('drags marks in the photo, but not from above', () => {
    expect(playTool(selectTool, photo, [press([125, 125])]).last.taken).toBe(true)
    expect(playTool(selectTool, above, [press([100, 100])]).last.taken).toBe(false)
  })

  it('backs out one level by Escape: the drag, then the selection, then no further', () => {
    const selected = toolScene({ selection: { kind: 'mark', markId: 'a' } })
    const dropped = playTool(selectTool, selected, [press([125, 125]), drag([180, 180]), key('Escape')])
    expect(dropped.last.select).toBeUndefined()
    expect(dropped.commands).toEqual([])
    expect(playTool(selectTool, selected, [key('Escape')]).last.select).toBeNull()
    expect(playTool(selectTool, photo, [key('Escape')]).last.unused).toBe(true)
  })

  it('keeps a drag through a key that is let go meanwhile', () => {
    const { commands } = playTool(selectTool, photo, [
      press([125, 125]),
      drag([150, 150]),
      KEY_UP,
      release([150, 150]),
    ])
    expect(commands).toHaveLength(1)
  })

  it('removes a selected trace whole', () => {
    const open = toolScene({ selection: { kind: 'trace', traceId: 'outline', point: null } })
    expect(playTool(selectTool, open, [key('Delete')]).commands).toEqual([
      { name: 'removeTrace', args: { slabId: 'slab', traceId: 'outline' } },
    ])
  })
})
