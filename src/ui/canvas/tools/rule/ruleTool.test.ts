import { describe, expect, it } from 'vitest'
import { click, key, playTool, toolScene } from '../../../../../tests/support/toolScene'
import { ruleTool } from './ruleTool'

const scene = () => toolScene({ tool: 'rule' })

describe('ruleTool', () => {
  it('lays a rule of the size at hand by its two ends', () => {
    const { commands, last } = playTool(ruleTool, scene(), [
      ...click([150, 150]),
      ...click([400, 150], 'touch'),
    ])
    expect(commands).toEqual([
      {
        name: 'layRule',
        args: {
          slabId: 'slab',
          photoId: 'photo',
          ruleId: 'new1',
          markIds: ['new2', 'new3'],
          endsPx: [
            [600, 600],
            [1600, 600],
          ],
          lengthMm: 1000,
          thicknessMm: 1,
          sdPx: 8,
          name: 'Rule 1',
        },
      },
    ])
    expect(last.select).toEqual({ kind: 'rule', ruleId: 'new1' })
  })

  it('gives up its first end by Backspace', () => {
    const played = playTool(ruleTool, scene(), [...click([150, 150]), key('Backspace')])
    expect(ruleTool.unfinished(played.state)).toEqual([])
    expect(played.commands).toEqual([])
  })

  it('sets ends with the cross of the arrow keys', () => {
    const played = playTool(ruleTool, scene(), [
      key('Enter', { crosshair: [600, 600] }),
      key('Enter', { crosshair: [1600, 600] }),
    ])
    expect(played.commands[0]).toMatchObject({ name: 'layRule', args: { sdPx: 2 } })
  })
})
