import { createStore } from 'zustand/vanilla'
import type { Point } from '../../core/geometry'
import type { ToolName } from '../../state/sessionStore'
import { toolAtRest, type ToolInHand } from './tools/toolTable'
import type { Camera, Size } from './view'

/** The cross that arrow keys move, for tools that set points. */
export interface Crosshair {
  readonly world: Point
  /** Moved since it last set something: Enter then sets a point there. */
  readonly isFresh: boolean
}

/** What the canvas itself remembers: neither saved nor undone. */
export interface CanvasState {
  readonly size: Size
  /** Only the views that were zoomed or moved by hand; the others show everything. */
  readonly cameras: ReadonlyMap<string, Camera>
  /** Tools by slab and name: an unfinished trace is still there when one comes back to it. */
  readonly hands: ReadonlyMap<string, ToolInHand>
  readonly crosshair: Crosshair | null
  readonly isPanning: boolean
  /** A finger or a button is down on the canvas. */
  readonly isTouched: boolean
  /** Shift is held: lines go straight. */
  readonly isStraightHeld: boolean
}

export const canvasStore = createStore<CanvasState>(() => ({
  size: { width: 0, height: 0 },
  cameras: new Map(),
  hands: new Map(),
  crosshair: null,
  isPanning: false,
  isTouched: false,
  isStraightHeld: false,
}))

const handKey = (slabId: string | null, tool: ToolName): string => `${slabId ?? ''}/${tool}`

export const toolInHand = (state: CanvasState, slabId: string | null, tool: ToolName): ToolInHand =>
  state.hands.get(handKey(slabId, tool)) ?? toolAtRest(tool)

export const putInHand = (slabId: string | null, hand: ToolInHand): void =>
  canvasStore.setState(({ hands }) => ({
    hands: new Map(hands).set(handKey(slabId, hand.name), hand),
  }))

export const holdStraight = (isStraightHeld: boolean): void => {
  if (canvasStore.getState().isStraightHeld !== isStraightHeld) canvasStore.setState({ isStraightHeld })
}

export const setCrosshair = (crosshair: Crosshair | null): void => canvasStore.setState({ crosshair })
