import { type Point, pointDistanceMm } from '../../core/geometry'
import { TAP_SLOP_PX } from './hitTest'
import type { PointerKind } from './tools/toolTypes'

/**
 * Sorts raw pointers into tool gestures, panning and pinching. A pinch or a pan never draws: as soon as a second finger
 * comes down, the tool's gesture is abandoned, and the fingers left over afterwards do nothing until all are up.
 */
export type GestureState =
  | { readonly kind: 'rest' }
  | { readonly kind: 'tool'; readonly id: number; readonly pointer: PointerKind; readonly last: Point }
  | {
      readonly kind: 'pan'
      readonly id: number
      readonly pointer: PointerKind
      readonly start: Point
      readonly last: Point
      readonly moved: boolean
      /** Let go without moving, it is a tap for the tool. */
      readonly mayTap: boolean
    }
  | { readonly kind: 'pinch'; readonly fingers: readonly [Finger, Finger] }
  | { readonly kind: 'spent'; readonly down: readonly number[] }

interface Finger {
  readonly id: number
  readonly at: Point
}

export type PointerInput =
  | {
      readonly kind: 'down'
      readonly id: number
      readonly at: Point
      readonly pointer: PointerKind
      /** Middle button, or space held: moves the view whatever the tool. */
      readonly wantsPan: boolean
    }
  | { readonly kind: 'move'; readonly id: number; readonly at: Point }
  | { readonly kind: 'up'; readonly id: number; readonly at: Point }
  | { readonly kind: 'cancel'; readonly id: number }
  /** The tool declined the press that it was just given. */
  | { readonly kind: 'declined' }

export type GestureEffect =
  | { readonly kind: 'press'; readonly screen: Point; readonly pointer: PointerKind }
  | { readonly kind: 'drag'; readonly screen: Point }
  | { readonly kind: 'release'; readonly screen: Point }
  | { readonly kind: 'tap'; readonly screen: Point; readonly pointer: PointerKind }
  | { readonly kind: 'abandon' }
  | { readonly kind: 'pan'; readonly dxPx: number; readonly dyPx: number }
  | { readonly kind: 'zoom'; readonly about: Point; readonly factor: number }

export interface GestureStep {
  readonly state: GestureState
  readonly effects: readonly GestureEffect[]
}

export const REST: GestureState = { kind: 'rest' }

/** Two fingers closer than this give no steady ratio, screen px. */
const LEAST_PINCH_PX = 8

export function gestureStep(state: GestureState, input: PointerInput): GestureStep {
  switch (input.kind) {
    case 'down':
      return onDown(state, input)
    case 'move':
      return onMove(state, input)
    case 'up':
      return onUp(state, input)
    case 'cancel':
      return onCancel(state, input.id)
    case 'declined':
      return onDeclined(state)
  }
}

const only = (state: GestureState, ...effects: readonly GestureEffect[]): GestureStep => ({ state, effects })

function onDown(state: GestureState, input: Extract<PointerInput, { kind: 'down' }>): GestureStep {
  const { id, at, pointer } = input
  switch (state.kind) {
    case 'rest':
      if (input.wantsPan) {
        return only({ kind: 'pan', id, pointer, start: at, last: at, moved: false, mayTap: false })
      }
      return only({ kind: 'tool', id, pointer, last: at }, { kind: 'press', screen: at, pointer })
    case 'tool':
      return only(pinchOf(state, input), { kind: 'abandon' })
    case 'pan':
      return only(pinchOf(state, input))
    case 'pinch':
      return only({ kind: 'spent', down: [...state.fingers.map((finger) => finger.id), id] })
    case 'spent':
      return only({ ...state, down: [...state.down, id] })
  }
}

const pinchOf = (first: { readonly id: number; readonly last: Point }, second: Finger): GestureState => ({
  kind: 'pinch',
  fingers: [
    { id: first.id, at: first.last },
    { id: second.id, at: second.at },
  ],
})

function onMove(state: GestureState, { id, at }: Extract<PointerInput, { kind: 'move' }>): GestureStep {
  if (state.kind === 'tool' && state.id === id) {
    return only({ ...state, last: at }, { kind: 'drag', screen: at })
  }
  if (state.kind === 'pan' && state.id === id) return panMove(state, at)
  if (state.kind === 'pinch') return pinchMove(state, { id, at })
  return only(state)
}

function panMove(state: Extract<GestureState, { kind: 'pan' }>, at: Point): GestureStep {
  const moved = state.moved || pointDistanceMm(state.start, at) > TAP_SLOP_PX[state.pointer]
  if (!moved) return only(state)
  return only(
    { ...state, last: at, moved },
    { kind: 'pan', dxPx: at[0] - state.last[0], dyPx: at[1] - state.last[1] },
  )
}

function pinchMove(state: Extract<GestureState, { kind: 'pinch' }>, finger: Finger): GestureStep {
  const [a, b] = state.fingers
  if (finger.id !== a.id && finger.id !== b.id) return only(state)
  const after: readonly [Finger, Finger] = finger.id === a.id ? [finger, b] : [a, finger]
  const middleBefore = middleOf(a, b)
  const middle = middleOf(...after)
  const before = Math.max(LEAST_PINCH_PX, pointDistanceMm(a.at, b.at))
  const now = Math.max(LEAST_PINCH_PX, pointDistanceMm(after[0].at, after[1].at))
  return only(
    { kind: 'pinch', fingers: after },
    { kind: 'pan', dxPx: middle[0] - middleBefore[0], dyPx: middle[1] - middleBefore[1] },
    { kind: 'zoom', about: middle, factor: now / before },
  )
}

const middleOf = (a: Finger, b: Finger): Point => [(a.at[0] + b.at[0]) / 2, (a.at[1] + b.at[1]) / 2]

function onUp(state: GestureState, { id, at }: Extract<PointerInput, { kind: 'up' }>): GestureStep {
  switch (state.kind) {
    case 'tool':
      return state.id === id ? only(REST, { kind: 'release', screen: at }) : only(state)
    case 'pan': {
      if (state.id !== id) return only(state)
      const tapped = state.mayTap && !state.moved
      return tapped ? only(REST, { kind: 'tap', screen: at, pointer: state.pointer }) : only(REST)
    }
    case 'pinch':
    case 'spent':
      return only(withoutFinger(state, id))
    case 'rest':
      return only(state)
  }
}

function withoutFinger(state: Extract<GestureState, { kind: 'pinch' | 'spent' }>, id: number): GestureState {
  const all = state.kind === 'pinch' ? state.fingers.map((finger) => finger.id) : state.down
  const down = all.filter((other) => other !== id)
  return down.length === 0 ? REST : { kind: 'spent', down }
}

function onCancel(state: GestureState, id: number): GestureStep {
  if (state.kind === 'tool') return state.id === id ? only(REST, { kind: 'abandon' }) : only(state)
  if (state.kind === 'pan') return state.id === id ? only(REST) : only(state)
  if (state.kind === 'rest') return only(state)
  return only(withoutFinger(state, id))
}

function onDeclined(state: GestureState): GestureStep {
  if (state.kind !== 'tool') return only(state)
  const { id, pointer, last } = state
  return only({ kind: 'pan', id, pointer, start: last, last, moved: false, mayTap: true })
}
