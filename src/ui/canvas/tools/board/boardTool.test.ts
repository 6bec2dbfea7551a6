import { describe, expect, it } from 'vitest'
import { click, key, playTool, toolScene } from '../../../../../tests/support/toolScene'
import { boardTool } from './boardTool'

const scene = () => toolScene({ tool: 'board' })
const taps = [
  [150, 150],
  [400, 150],
  [400, 275],
  [150, 275],
] as const
const corners = [
  [600, 600],
  [1600, 600],
  [1600, 1100],
  [600, 1100],
]

describe('boardTool', () => {
  it('lays a board of the size at hand by its four corners in turn', () => {
    const { commands, last } = playTool(
      boardTool,
      scene(),
      taps.flatMap((corner) => click(corner)),
    )
    expect(commands).toEqual([
      {
        name: 'layBoard',
        args: {
          slabId: 'slab',
          photoId: 'photo',
          boardId: 'new1',
          markIds: ['new2', 'new3', 'new4', 'new5'],
          cornersPx: corners,
          lengthMm: 1000,
          widthMm: 500,
          thicknessMm: 18,
          sdPx: 4,
          name: 'Board 1',
        },
      },
    ])
    expect(last.select).toEqual({ kind: 'board', boardId: 'new1' })
    expect(last.layDown).toBe(true)
  })

  it('sets no corner while the board’s size is not said', () => {
    const unsized = { ...scene(), boardSize: null }
    const { state, commands, last } = playTool(boardTool, unsized, click([150, 150]))
    expect(commands).toEqual([])
    expect(boardTool.unfinished(state)).toEqual([])
    expect(last.say).toEqual({ kind: 'board-unsized' })
  })

  it('takes corners back one by one, and all of them by Escape; undo brings them back', () => {
    const three = taps.slice(0, 3).flatMap((corner) => click(corner))
    const { state } = playTool(boardTool, scene(), [...three, key('Backspace')])
    expect(boardTool.unfinished(state)).toEqual(corners.slice(0, 2))
    const dropped = playTool(boardTool, scene(), [...three, key('Escape')])
    expect(boardTool.unfinished(dropped.state)).toEqual([])
    const back = playTool(boardTool, scene(), [{ kind: 'takeBack' }], dropped.state)
    expect(boardTool.unfinished(back.state)).toEqual(corners.slice(0, 3))
    expect(playTool(boardTool, scene(), [key('Escape')]).last.unused).toBe(true)
  })

  it('works by keys alone', () => {
    const events = corners.map(([x, y]) => key('Enter', { crosshair: [x ?? 0, y ?? 0] }))
    expect(playTool(boardTool, scene(), events).commands[0]?.name).toBe('layBoard')
  })

  it('refuses a corner beside the photo and keeps the others', () => {
    const { state, last } = playTool(boardTool, scene(), [...click([150, 150]), ...click([799, 5])])
    expect(last.say).toEqual({ kind: 'outside-photo' })
    expect(boardTool.unfinished(state)).toHaveLength(1)
  })
})
