import type { PxPoint } from '../../../../core/geometry'
import { type Aiming, aimedPx, aimOf, moveAim, startAim } from '../aim'
import { clickSdPx } from '../clickCare'
import type { Scene, Tool, ToolEvent, ToolStep } from '../toolTypes'
import { t } from '../../../text/t'

/** Corners set so far, in turn round the board; the first two are the ends of one long side. */
export interface BoardState {
  readonly corners: readonly PxPoint[]
  /** Let go by Escape: undo brings them back. */
  readonly dropped: readonly PxPoint[]
  readonly aiming: Aiming | null
}

const IDLE: BoardState = { corners: [], dropped: [], aiming: null }

/** Four taps lay a board of known size: its corners in turn. */
export const boardTool: Tool<BoardState> = {
  idle: IDLE,
  step,
  aim: ({ aiming }) => aiming && aimOf(aiming),
  unfinished: ({ corners }) => corners,
}

function step(state: BoardState, event: ToolEvent, scene: Scene): ToolStep<BoardState> {
  const { aiming } = state
  switch (event.kind) {
    case 'press':
      return { state: { ...state, aiming: startAim(event.screen, event.pointer, scene) }, taken: true }
    case 'drag':
      return { state: { ...state, aiming: aiming && moveAim(aiming, event.screen, scene) } }
    case 'release':
      return aiming
        ? withCorner({ ...state, aiming: null }, moveAim(aiming, event.screen, scene), scene)
        : { state }
    case 'abandon':
      return { state: { ...state, aiming: null } }
    case 'key':
      return stepKey(state, event, scene)
    case 'takeBack':
      return takeBack(state)
    default:
      return { state, unused: true }
  }
}

function stepKey(
  state: BoardState,
  event: Extract<ToolEvent, { kind: 'key' }>,
  scene: Scene,
): ToolStep<BoardState> {
  if (event.key === 'Enter' && event.crosshair)
    return withCorner(state, { at: event.crosshair, pointer: 'keys' }, scene)
  if (event.key === 'Backspace' || event.key === 'Delete') return takeBack(state)
  if (event.key !== 'Escape') return { state, unused: true }
  if (state.aiming) return { state: { ...state, aiming: null } }
  if (state.corners.length === 0) return { state, unused: true }
  return { state: { ...IDLE, dropped: state.corners }, say: { kind: 'trace-dropped' } }
}

function takeBack(state: BoardState): ToolStep<BoardState> {
  if (state.corners.length > 0) {
    const corners = state.corners.slice(0, -1)
    return { state: { ...state, corners }, say: { kind: 'point-taken-back', left: corners.length } }
  }
  if (state.dropped.length === 0) return { state, unused: true }
  return {
    state: { ...IDLE, corners: state.dropped },
    say: { kind: 'corner-set', number: state.dropped.length },
  }
}

function withCorner(
  state: BoardState,
  { at, pointer }: Pick<Aiming, 'at' | 'pointer'>,
  scene: Scene,
): ToolStep<BoardState> {
  const { slab, photo, boardSize } = scene
  if (boardSize === null) return { state, say: { kind: 'board-unsized' } }
  const atPx = aimedPx(at, scene)
  if (!slab || !photo || !atPx) return { state, say: { kind: 'outside-photo' } }
  const corners = [...state.corners, atPx]
  const [a, b, c, d] = corners
  if (!a || !b || !c || !d) {
    return { state: { ...IDLE, corners }, say: { kind: 'corner-set', number: corners.length } }
  }
  const boardId = scene.newId()
  return {
    state: IDLE,
    command: {
      name: 'layBoard',
      args: {
        slabId: slab.id,
        photoId: photo.id,
        boardId,
        markIds: [scene.newId(), scene.newId(), scene.newId(), scene.newId()],
        cornersPx: [a, b, c, d],
        ...boardSize,
        sdPx: clickSdPx(pointer, scene),
        name: boardName(slab.boards.map(({ name }) => name)),
      },
    },
    select: { kind: 'board', boardId },
    layDown: true,
    say: { kind: 'board-laid' },
  }
}

/** "Board 1", or the first number that is free. */
function boardName(taken: readonly string[]): string {
  for (let number = 1; ; number++) {
    const name = t('canvas-board-name', { number: String(number) })
    if (!taken.includes(name)) return name
  }
}
