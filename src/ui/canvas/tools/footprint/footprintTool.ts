import type { Point } from '../../../../core/geometry'
import { poseSubject, tableBox } from '../../poseSubject'
import { worldOf } from '../../view'
import { EMPTY_HAND, type Grab, grabBody, grabHandle, startNudge, stepGrab } from '../grab'
import { stepKey } from '../stepKey'
import type { Handle, Scene, Tool, ToolEvent, ToolStep } from '../toolTypes'

const isTurnHandle = (handle: Handle): boolean => handle.kind === 'turnHandle'

/** Drags the table over the slab, turns it by its handle, nudges it; lays it down where it is tapped if it is not laid yet. */
export const footprintTool: Tool<Grab> = {
  idle: EMPTY_HAND,
  step: (state, event, scene) => stepGrab(state, event, scene) ?? stepIdle(event, scene),
  aim: () => null,
  unfinished: () => [],
}

function stepIdle(event: ToolEvent, scene: Scene): ToolStep<Grab> {
  switch (event.kind) {
    case 'press':
      return pressed(event, scene)
    case 'tap':
      return poseSubject(scene, { kind: 'footprint' })
        ? { state: EMPTY_HAND }
        : layAt(worldOf(scene.camera, event.screen), scene)
    case 'key':
      return keyed(event, scene)
    default:
      return { state: EMPTY_HAND, unused: true }
  }
}

function pressed({ screen, pointer }: Extract<ToolEvent, { kind: 'press' }>, scene: Scene): ToolStep<Grab> {
  const grabbed =
    grabHandle(scene, screen, pointer, isTurnHandle) ??
    grabBody(scene, { kind: 'footprint' }, screen, pointer)
  if (!grabbed || !scene.option) return { state: EMPTY_HAND, taken: false }
  return { ...grabbed, select: { kind: 'footprint' } }
}

/** The table has no need to be selected first: with this tool the keys are its own. */
function keyed(event: Extract<ToolEvent, { kind: 'key' }>, scene: Scene): ToolStep<Grab> {
  if (!scene.option) return { state: EMPTY_HAND, unused: true }
  if (event.key === 'Enter' && event.crosshair && !poseSubject(scene, { kind: 'footprint' })) {
    return layAt(event.crosshair, scene)
  }
  const selection = { kind: 'footprint' } as const
  const nudged = startNudge(event, { ...scene, selection })
  if (nudged) return { ...nudged, select: selection }
  return stepKey(event, scene)
}

/** The table's middle where it was asked for, its length along the datum. */
function layAt(world: Point, scene: Scene): ToolStep<Grab> {
  const { option, slab, frames } = scene
  const middle = frames.slabFromWorld(world)
  if (!option || !slab || !middle || scene.view === 'table') return { state: EMPTY_HAND }
  const { minX, minY, maxX, maxY } = tableBox(option)
  const pose = {
    xMm: middle[0] - (minX + maxX) / 2,
    yMm: middle[1] - (minY + maxY) / 2,
    angleRad: 0,
    turnedOver: false,
  }
  return {
    state: EMPTY_HAND,
    command: { name: 'layFootprint', args: { optionId: option.id, slabId: slab.id, pose } },
    select: { kind: 'footprint' },
    say: { kind: 'table-laid' },
  }
}
