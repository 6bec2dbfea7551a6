import { describe, expect, it } from 'vitest'
import { drag, key, playTool, press, release, toolScene } from '../../../../../tests/support/toolScene'
import { pxPoint } from '../../../../core/geometry'
import { strokeTool } from './strokeTool'

const wood = strokeTool('wood')
const scene = toolScene({ tool: 'wood' })

describe('strokeTool', () => {
  it('draws a stroke from where it is pressed to where it is let go', () => {
    const { last, steps } = playTool(wood, scene, [press([100, 100]), drag([150, 110]), release([200, 120])])
    expect(steps[0]?.taken).toBe(true)
    expect(last.trace).toEqual([
      { kind: 'stroke', stroke: { kind: 'wood', fromPx: pxPoint(400, 400), toPx: pxPoint(800, 480) } },
    ])
  })

  it('takes a trembling tap for a spot, by finger more than by mouse', () => {
    const { last } = playTool(strokeTool('not-wood'), scene, [
      press([100, 100], 'touch'),
      release([106, 104]),
    ])
    const at = pxPoint(400, 400)
    expect(last.trace).toEqual([{ kind: 'stroke', stroke: { kind: 'not-wood', fromPx: at, toPx: at } }])
    const byMouse = playTool(wood, scene, [press([100, 100]), release([106, 104])])
    expect(byMouse.last.trace).toMatchObject([{ stroke: { toPx: [424, 416] } }])
  })

  it('sets both ends by keys, and then accepts by Enter what was found', () => {
    const { last, state } = playTool(wood, scene, [
      key('Enter', { crosshair: [40, 40] }),
      key('Enter', { crosshair: [80, 40] }),
    ])
    expect(last.trace).toMatchObject([{ stroke: { fromPx: [40, 40], toPx: [80, 40] } }])
    expect(wood.step(state, key('Enter'), scene)).toMatchObject({ unused: true })
    const found = toolScene({ tool: 'wood', tracing: { outlinePx: [pxPoint(0, 0)] } })
    expect(wood.step(state, key('Enter'), found).trace).toEqual([{ kind: 'accept-outline' }])
    const looking = toolScene({
      tool: 'wood',
      tracing: { outlinePx: [pxPoint(0, 0)], isFindingOutline: true },
    })
    expect(wood.step(state, key('Enter'), looking).unused).toBe(true)
  })

  it('takes back the stroke under way, then the last one, then nothing', () => {
    const under = playTool(wood, scene, [key('Enter', { crosshair: [40, 40] }), { kind: 'takeBack' }])
    expect(under.last).toMatchObject({ state: { keyed: null } })
    expect(under.last.unused).toBeUndefined()
    const at = pxPoint(1, 1)
    const stroked = toolScene({ tracing: { strokes: [{ kind: 'wood', fromPx: at, toPx: at }] } })
    expect(wood.step(wood.idle, { kind: 'takeBack' }, stroked).trace).toEqual([{ kind: 'take-back-stroke' }])
    expect(wood.step(wood.idle, key('Backspace'), stroked).trace).toEqual([{ kind: 'take-back-stroke' }])
    expect(wood.step(wood.idle, { kind: 'takeBack' }, scene).unused).toBe(true)
  })

  it('backs out of a stroke by Escape or a second finger, and draws nothing beside the photo', () => {
    expect(playTool(wood, scene, [press([1, 1]), { kind: 'abandon' }, release([90, 90])]).last.trace).toBe(
      undefined,
    )
    expect(playTool(wood, scene, [press([1, 1]), key('Escape')]).last.unused).toBeUndefined()
    const beside = playTool(wood, scene, [press([-10, 1]), release([90, 90])])
    expect(beside.last.say).toEqual({ kind: 'outside-photo' })
    expect(beside.last.trace).toBeUndefined()
  })
})
