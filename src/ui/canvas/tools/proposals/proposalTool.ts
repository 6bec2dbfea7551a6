import { isPointInRing, type Point, pointToRingDistanceMm } from '../../../../core/geometry'
import type { ProposedVoid } from '../../../../state/tracingStore'
import { HIT_RADIUS_PX } from '../../hitTest'
import { screenOf, worldOf } from '../../view'
import type { PointerKind, Scene, Tool, ToolEvent, ToolStep } from '../toolTypes'

type Nothing = null

/**
 * Judges what the program proposes: a tap chooses a proposal, Enter accepts the chosen one, Delete declines it, square
 * brackets go from one to the next.
 */
export const proposalTool: Tool<Nothing> = {
  idle: null,
  step: (state, event, scene) => step(state, event, scene),
  aim: () => null,
  unfinished: () => [],
}

function step(state: Nothing, event: ToolEvent, scene: Scene): ToolStep<Nothing> {
  switch (event.kind) {
    case 'press':
      return pressed(event.screen, event.pointer, scene)
    case 'key':
      if (event.key !== 'Enter' || !event.crosshair) return keyed(event.key, scene)
      return pressed(screenOf(scene.camera, event.crosshair), 'keys', scene)
    default:
      return { state, unused: true }
  }
}

function pressed(screen: Point, pointer: PointerKind, scene: Scene): ToolStep<Nothing> {
  const at = worldOf(scene.camera, screen)
  const reachPx = HIT_RADIUS_PX[pointer] / scene.camera.scale
  const hit = (scene.tracing.voids ?? []).find(
    ({ ringPx }) => isPointInRing(at, ringPx) || pointToRingDistanceMm(at, ringPx) <= reachPx,
  )
  return hit ? { ...chosen(hit, scene), taken: true } : { state: null, taken: false }
}

function chosen(proposal: ProposedVoid, { tracing }: Scene): ToolStep<Nothing> {
  const number = (tracing.voids ?? []).indexOf(proposal) + 1
  return {
    state: null,
    trace: [{ kind: 'choose-void', id: proposal.id }],
    say: { kind: 'proposal-chosen', number },
  }
}

function keyed(key: Extract<ToolEvent, { kind: 'key' }>['key'], scene: Scene): ToolStep<Nothing> {
  const { chosenVoid } = scene.tracing
  const voids = scene.tracing.voids ?? []
  const place = voids.findIndex(({ id }) => id === chosenVoid)
  if (chosenVoid === null || place < 0) return { state: null, unused: true }
  switch (key) {
    case 'Enter':
      return { state: null, trace: [{ kind: 'accept-void', id: chosenVoid }] }
    case 'Delete':
    case 'Backspace':
      return { state: null, trace: [{ kind: 'drop-void', id: chosenVoid }] }
    case '[':
      return goneTo(voids, place + voids.length - 1, scene)
    case ']':
      return goneTo(voids, place + 1, scene)
    default:
      return { state: null, unused: true }
  }
}

/** Round the list. */
function goneTo(voids: readonly ProposedVoid[], place: number, scene: Scene): ToolStep<Nothing> {
  const next = voids[place % voids.length]
  return next ? chosen(next, scene) : { state: null, unused: true }
}
