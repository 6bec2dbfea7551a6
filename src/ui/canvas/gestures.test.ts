import { describe, expect, it } from 'vitest'
import type { Point } from '../../core/geometry'
import { gestureStep, REST, type GestureEffect, type GestureState, type PointerInput } from './gestures'

function play(inputs: readonly PointerInput[], from: GestureState = REST) {
  let state = from
  const effects: GestureEffect[] = []
  for (const input of inputs) {
    const step = gestureStep(state, input)
    state = step.state
    effects.push(...step.effects)
  }
  return { state, effects }
}

const down = (
  id: number,
  at: Point,
  pointer: 'touch' | 'mouse' = 'touch',
  wantsPan = false,
): PointerInput => ({
  kind: 'down',
  id,
  at,
  pointer,
  wantsPan,
})
const move = (id: number, at: Point): PointerInput => ({ kind: 'move', id, at })
const up = (id: number, at: Point): PointerInput => ({ kind: 'up', id, at })

describe('gestures', () => {
  it('hands one finger to the tool from press to release', () => {
    expect(play([down(1, [10, 10]), move(1, [20, 15]), up(1, [30, 20])])).toEqual({
      state: REST,
      effects: [
        { kind: 'press', screen: [10, 10], pointer: 'touch' },
        { kind: 'drag', screen: [20, 15] },
        { kind: 'release', screen: [30, 20] },
      ],
    })
  })

  it('abandons the tool gesture when a second finger comes down, so that a pinch never draws', () => {
    const { state, effects } = play([
      down(1, [100, 100]),
      down(2, [200, 100]),
      move(2, [300, 100]),
      up(1, [100, 100]),
      move(2, [310, 100]),
      up(2, [310, 100]),
    ])
    expect(effects).toEqual([
      { kind: 'press', screen: [100, 100], pointer: 'touch' },
      { kind: 'abandon' },
      // by hand: the middle goes from 150 to 200, the spread from 100 to 200
      { kind: 'pan', dxPx: 50, dyPx: 0 },
      { kind: 'zoom', about: [200, 100], factor: 2 },
    ])
    expect(state).toEqual(REST)
  })

  it('lets a finger left over from a pinch do nothing until all are up', () => {
    const { state, effects } = play([
      down(1, [0, 0]),
      down(2, [100, 0]),
      up(2, [100, 0]),
      down(3, [50, 50]),
      up(3, [50, 50]),
    ])
    expect(effects.map((effect) => effect.kind)).toEqual(['press', 'abandon'])
    expect(state).toEqual({ kind: 'spent', down: [1] })
    expect(play([up(1, [0, 0])], state).state).toEqual(REST)
  })

  it('pans when the tool declines, and reports a tap when nothing moved', () => {
    const tap = play([down(1, [50, 50], 'mouse'), { kind: 'declined' }, move(1, [52, 50]), up(1, [52, 50])])
    expect(tap.effects.at(-1)).toEqual({ kind: 'tap', screen: [52, 50], pointer: 'mouse' })
    const pan = play([down(1, [50, 50], 'mouse'), { kind: 'declined' }, move(1, [60, 45]), up(1, [60, 45])])
    expect(pan.effects.slice(1)).toEqual([{ kind: 'pan', dxPx: 10, dyPx: -5 }])
  })

  it('pans with the middle button or space, without a word to the tool', () => {
    const { effects } = play([down(1, [0, 0], 'mouse', true), move(1, [30, 0]), up(1, [30, 0])])
    expect(effects).toEqual([{ kind: 'pan', dxPx: 30, dyPx: 0 }])
    expect(play([down(1, [0, 0], 'mouse', true), up(1, [0, 0])]).effects).toEqual([])
  })

  it('abandons the gesture when the browser takes the pointer away', () => {
    expect(play([down(1, [0, 0]), { kind: 'cancel', id: 1 }])).toEqual({
      state: REST,
      effects: [{ kind: 'press', screen: [0, 0], pointer: 'touch' }, { kind: 'abandon' }],
    })
  })

  it('ignores pointers it does not know', () => {
    const before = play([down(1, [0, 0])]).state
    expect(gestureStep(before, move(7, [9, 9]))).toEqual({ state: before, effects: [] })
    expect(gestureStep(before, up(7, [9, 9]))).toEqual({ state: before, effects: [] })
    expect(gestureStep(before, { kind: 'cancel', id: 7 })).toEqual({ state: before, effects: [] })
    expect(gestureStep(REST, { kind: 'declined' })).toEqual({ state: REST, effects: [] })
  })

  it('keeps the zoom steady when two fingers nearly touch', () => {
    const { effects } = play([down(1, [100, 100]), down(2, [101, 100]), move(2, [102, 100])])
    expect(effects.at(-1)).toEqual({ kind: 'zoom', about: [101, 100], factor: 1 })
  })
})
