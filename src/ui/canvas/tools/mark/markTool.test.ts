import { describe, expect, it } from 'vitest'
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
import { FINGER_LEAD_PX } from '../aim'
import { markTool } from './markTool'

const scene = toolScene({ tool: 'mark' })
const at = { slabId: 'slab', photoId: 'photo' }

describe('markTool', () => {
  it('sets a mark where a tap was, in photo pixels', () => {
    const { commands, last } = playTool(markTool, scene, click([200, 180]))
    // by hand: a quarter of a screen px to the photo px
    expect(commands).toEqual([
      // by hand, too: a mouse is 1 screen px off
      { name: 'placeMark', args: { ...at, markId: 'new1', atPx: [800, 720], sdPx: 4 } },
    ])
    expect(last.say).toEqual({ kind: 'mark-set', markId: 'new1' })
  })

  it('sets it where the finger has dragged the point to, ahead of the fingertip', () => {
    const { commands, steps } = playTool(markTool, toolScene({ tool: 'mark' }), [
      press([200, 180], 'touch'),
      drag([240, 260]),
      release([240, 260]),
    ])
    expect(commands).toEqual([
      {
        name: 'placeMark',
        args: { ...at, markId: 'new1', atPx: [960, 4 * (260 - FINGER_LEAD_PX)], sdPx: 8 },
      },
    ])
    const aim = steps[1] && markTool.aim(steps[1].state)
    expect(aim).toEqual({ world: [960, 4 * (260 - FINGER_LEAD_PX)], pointerAt: [240, 260], pointer: 'touch' })
  })

  it('takes a shaky fingertip for a tap', () => {
    const { commands } = playTool(markTool, toolScene({ tool: 'mark' }), [
      press([200, 180], 'touch'),
      drag([204, 184]),
      release([204, 184]),
    ])
    expect(commands).toEqual([
      { name: 'placeMark', args: { ...at, markId: 'new1', atPx: [800, 720], sdPx: 8 } },
    ])
  })

  it('drags a mark that is there, in one step, without a jump', () => {
    // mark A lies at photo px (500, 500), screen (125, 125)
    const { commands, steps } = playTool(markTool, scene, [
      press([128, 122]),
      drag([138, 132]),
      drag([148, 142]),
      release([148, 142]),
    ])
    const moved = { name: 'moveMark', args: { ...at, markId: 'a', atPx: [580, 580], sdPx: 4 } }
    expect(steps.map(({ draft }) => draft ?? null)).toEqual([
      null,
      { name: 'moveMark', args: { ...at, markId: 'a', atPx: [540, 540], sdPx: 4 } },
      moved,
      null,
    ])
    expect(commands).toEqual([moved])
    expect(steps[0]?.select).toEqual({ kind: 'mark', markId: 'a' })
  })

  it('reaches 22 px for a finger and 10 px for a mouse', () => {
    const near = [125 + 18, 125] as const
    expect(playTool(markTool, scene, [press(near, 'touch')]).last.select).toEqual({
      kind: 'mark',
      markId: 'a',
    })
    expect(playTool(markTool, scene, [press(near, 'mouse')]).last.select).toBeUndefined()
  })

  it('leaves everything as it was when the drag is dropped by Escape or by a second finger', () => {
    for (const end of [key('Escape'), { kind: 'abandon' } as const]) {
      const played = playTool(markTool, scene, [
        press([125, 125]),
        drag([200, 200]),
        end,
        release([200, 200]),
      ])
      expect(played.commands).toEqual([])
      expect(played.state).toEqual(markTool.idle)
      expect(played.steps[2]?.draft ?? null).toBeNull()
    }
  })

  it('does not set a mark beside the photo', () => {
    const { commands, last } = playTool(markTool, scene, click([790, 20]))
    expect(commands).toEqual([])
    expect(last.say).toEqual({ kind: 'outside-photo' })
  })

  it('works by keys alone: Enter sets, Enter on a mark selects it, arrows then move it in one step', () => {
    const set = playTool(markTool, toolScene({ tool: 'mark' }), [key('Enter', { crosshair: [900, 901] })])
    expect(set.commands).toEqual([
      { name: 'placeMark', args: { ...at, markId: 'new1', atPx: [900, 901], sdPx: 2 } },
    ])

    const chosen = playTool(markTool, scene, [key('Enter', { crosshair: [510, 500] })])
    expect(chosen.commands).toEqual([])
    expect(chosen.last.select).toEqual({ kind: 'mark', markId: 'a' })

    const selected = toolScene({ tool: 'mark', selection: { kind: 'mark', markId: 'a' } })
    const { commands } = playTool(markTool, selected, [
      key('ArrowRight'),
      key('ArrowRight', { shift: true }),
      key('ArrowUp', { alt: true }),
      KEY_UP,
    ])
    // Set step by step, it stays exactly there.
    expect(commands).toEqual([
      { name: 'moveMark', args: { ...at, markId: 'a', atPx: [511, 499.9], sdPx: 2, isKept: true } },
    ])
  })

  it('leaves arrow keys to the cross while nothing is selected', () => {
    expect(playTool(markTool, scene, [key('ArrowLeft')]).last.unused).toBe(true)
  })

  it('removes the selected mark by the delete key', () => {
    const selected = toolScene({ tool: 'mark', selection: { kind: 'mark', markId: 'b' } })
    expect(playTool(markTool, selected, [key('Delete')]).commands).toEqual([
      { name: 'removeMark', args: { slabId: 'slab', markId: 'b' } },
    ])
  })
})
