import { clickSdPx } from '../clickCare'
import { aimOfGrab, EMPTY_HAND, type Grab, grabHandle, stepGrab } from '../grab'
import { NO_POINTS, pointsTool, type PointsState } from '../setPoints'
import { stepKey } from '../stepKey'
import type { Handle, Tool, ToolEvent, ToolStep, Scene } from '../toolTypes'

/** Two points are always straight: it takes a third to show the lens's bow. */
export const LEAST_LINE_POINTS = 3

const setting = pointsTool({
  whenFull: null,
  finished: (points, pointer, scene) => {
    const { slab, photo } = scene
    if (!slab || !photo || points.length < LEAST_LINE_POINTS) return null
    const lineId = scene.newId()
    return {
      command: {
        name: 'addStraightLine',
        args: {
          slabId: slab.id,
          photoId: photo.id,
          lineId,
          pointsPx: points,
          sdPx: clickSdPx(pointer, scene),
        },
      },
      select: { kind: 'line', lineId, point: null },
      say: { kind: 'line-drawn', points: points.length },
    }
  },
})

export interface LineState {
  readonly grab: Grab
  readonly points: PointsState
}

const IDLE: LineState = { grab: EMPTY_HAND, points: NO_POINTS }
const isLinePoint = (handle: Handle): boolean => handle.kind === 'linePoint'

/** Taps along something straight; Enter ends it. Points of a line that is there already are dragged. */
export const lineTool: Tool<LineState> = {
  idle: IDLE,
  step,
  aim: ({ grab, points }) => setting.aim(points) ?? aimOfGrab(grab),
  unfinished: ({ points }) => setting.unfinished(points),
}

const inHand = (answer: ToolStep<Grab>): ToolStep<LineState> => ({
  ...answer,
  state: { ...IDLE, grab: answer.state },
})

function step(state: LineState, event: ToolEvent, scene: Scene): ToolStep<LineState> {
  const held = stepGrab(state.grab, event, scene)
  if (held) return inHand(held)
  const isFree = state.points.points.length === 0
  if (isFree && event.kind === 'press') {
    const grabbed = grabHandle(scene, event.screen, event.pointer, isLinePoint)
    if (grabbed) return inHand(grabbed)
  }
  const answer = setting.step(state.points, event, scene)
  if (answer.unused === true && isFree && event.kind === 'key') return inHand(stepKey(event, scene))
  return { ...answer, state: { ...IDLE, points: answer.state } }
}
