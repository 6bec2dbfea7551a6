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
  toolScene,
} from '../../../../../tests/support/toolScene'
import type { Slab } from '../../../../core/plan'
import { datumTool } from './datumTool'

function withoutDatum(): Slab {
  const slab = flatSlab()
  return slab.capture.kind === 'photo' ? { ...slab, capture: { ...slab.capture, datum: null } } : slab
}

const at = { slabId: 'slab', photoId: 'photo' }

describe('datumTool', () => {
  it('drags one end and leaves the other', () => {
    // its second end: photo px (2300, 500), screen (575, 125)
    const { commands } = playTool(datumTool, toolScene({ tool: 'datum' }), [
      press([575, 125]),
      drag([585, 135]),
      release([585, 135]),
    ])
    expect(commands).toEqual([{ name: 'setDatum', args: { ...at, fromPx: [500, 500], toPx: [2340, 540] } }])
  })

  it('pans where no end is', () => {
    expect(playTool(datumTool, toolScene({ tool: 'datum' }), [press([300, 300])]).last.taken).toBe(false)
  })

  it('is set by two taps where there is none, and by two Enters', () => {
    const bare = toolScene({ plan: flatPlan(withoutDatum()), tool: 'datum' })
    const command = { name: 'setDatum', args: { ...at, fromPx: [400, 800], toPx: [2000, 840] } }
    expect(playTool(datumTool, bare, [...click([100, 200]), ...click([500, 210])]).commands).toEqual([
      command,
    ])
    expect(
      playTool(datumTool, bare, [
        key('Enter', { crosshair: [400, 800] }),
        key('Enter', { crosshair: [2000, 840] }),
      ]).commands,
    ).toEqual([command])
  })

  it('lets go of the first end by Escape or undo', () => {
    const bare = toolScene({ plan: flatPlan(withoutDatum()), tool: 'datum' })
    for (const back of [key('Escape'), { kind: 'takeBack' } as const]) {
      const { state, commands } = playTool(datumTool, bare, [...click([100, 200]), back])
      expect(datumTool.unfinished(state)).toEqual([])
      expect(commands).toEqual([])
    }
  })

  it('moves the selected end by arrows', () => {
    const scene = toolScene({ tool: 'datum', selection: { kind: 'datum', end: 'from' } })
    expect(playTool(datumTool, scene, [key('ArrowDown'), KEY_UP]).commands).toEqual([
      { name: 'setDatum', args: { ...at, fromPx: [500, 501], toPx: [2300, 500] } },
    ])
  })
})
