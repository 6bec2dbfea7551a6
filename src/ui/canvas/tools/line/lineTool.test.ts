import { describe, expect, it } from 'vitest'
import { flatPlan, flatPx, flatSlab } from '../../../../../tests/support/flatPlan'
import { click, drag, key, playTool, press, release, toolScene } from '../../../../../tests/support/toolScene'
import { addStraightLine } from '../../../../state/commands'
import { lineTool } from './lineTool'

const taps = [
  [150, 200],
  [300, 201],
  [450, 200],
] as const
const tapped = taps.flatMap((at) => click(at))
const drawn = addStraightLine.apply(flatPlan(flatSlab()), {
  slabId: 'slab',
  photoId: 'photo',
  lineId: 'chalk',
  pointsPx: [flatPx(100, 300), flatPx(900, 301), flatPx(1700, 300)],
})

describe('lineTool', () => {
  it('draws a line through the points tapped, once Enter ends it', () => {
    const played = playTool(lineTool, toolScene({ tool: 'line' }), [...tapped, key('Enter')])
    expect(played.commands).toEqual([
      {
        name: 'addStraightLine',
        args: {
          slabId: 'slab',
          photoId: 'photo',
          lineId: 'new1',
          pointsPx: taps.map(([x, y]) => [x * 4, y * 4]),
          sdPx: 4,
        },
      },
    ])
    expect(played.last.say).toEqual({ kind: 'line-drawn', points: 3 })
    expect(lineTool.unfinished(played.state)).toEqual([])
  })

  it('says that two points are too few, and keeps them', () => {
    const played = playTool(lineTool, toolScene({ tool: 'line' }), [...tapped.slice(0, 4), key('Enter')])
    expect(played.commands).toEqual([])
    expect(played.last.say).toEqual({ kind: 'points-missing', placed: 2 })
    expect(lineTool.unfinished(played.state)).toHaveLength(2)
  })

  it('lets go by Escape what undo then brings back', () => {
    const events = [...tapped, key('Escape'), { kind: 'takeBack' } as const]
    const played = playTool(lineTool, toolScene({ tool: 'line' }), events)
    expect(lineTool.unfinished(played.state)).toHaveLength(3)
  })

  it('drags a point of a line that is there', () => {
    const scene = toolScene({ tool: 'line', plan: drawn })
    const [x, y] = flatPx(900, 301)
    const at = [x / 4, y / 4] as const
    const to = [at[0] + 10, at[1] + 5] as const
    const { commands } = playTool(lineTool, scene, [press(at), drag(to), release(to)])
    expect(commands).toEqual([
      {
        name: 'moveLinePoint',
        args: {
          slabId: 'slab',
          photoId: 'photo',
          lineId: 'chalk',
          index: 1,
          atPx: [x + 40, y + 20],
          sdPx: 4,
        },
      },
    ])
  })

  it('removes the selected line by Delete', () => {
    const scene = toolScene({
      tool: 'line',
      plan: drawn,
      selection: { kind: 'line', lineId: 'chalk', point: null },
    })
    expect(playTool(lineTool, scene, [key('Delete')]).commands).toEqual([
      { name: 'removeStraightLine', args: { slabId: 'slab', photoId: 'photo', lineId: 'chalk' } },
    ])
  })
})
