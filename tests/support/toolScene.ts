import { computePlan, type Plan } from '../../src/core/plan'
import { NO_TRACING, type TracingState } from '../../src/state/tracingStore'
import type { Selection, ToolName, ViewName } from '../../src/state/sessionStore'
import { sceneModel } from '../../src/ui/canvas/scene'
import type { ToolCommand } from '../../src/ui/canvas/tools/toolCommand'
import type { Scene, Tool, ToolEvent, ToolKey, ToolStep } from '../../src/ui/canvas/tools/toolTypes'
import type { Camera } from '../../src/ui/canvas/view'
import { flatPlan } from './flatPlan'

export interface SceneWish {
  readonly plan?: Plan
  readonly photoId?: string
  readonly view?: ViewName
  readonly tool?: ToolName
  readonly selection?: Selection | null
  readonly camera?: Camera
  readonly followsEdge?: boolean
  readonly tracing?: Partial<TracingState>
}

/** A canvas of 800 × 600 px on the flat plan, with new ids that count up: new1, new2 … */
export function toolScene(wish: SceneWish = {}): Scene {
  const plan = wish.plan ?? flatPlan()
  let ids = 0
  const model = sceneModel(
    plan,
    computePlan(plan),
    {
      slabId: null,
      photoId: wish.photoId ?? null,
      optionId: null,
      stage: 'table',
      view: wish.view ?? 'photo',
      tool: wish.tool ?? 'select',
      selection: wish.selection ?? null,
      boardSize: { lengthMm: 1000, widthMm: 500, thicknessMm: 18 },
      ruleSize: { lengthMm: 1000, thicknessMm: 1 },
      showsWeak: false,
      followsEdge: wish.followsEdge ?? false,
      pushRadiusPx: 30,
    },
    () => `new${++ids}`,
  )
  // One screen px is four photo px or mm.
  const tracing = { ...NO_TRACING, ...wish.tracing }
  return {
    ...model,
    tracing,
    camera: wish.camera ?? { scale: 0.25, x: 0, y: 0 },
    size: { width: 800, height: 600 },
  }
}

export interface Played<State> {
  readonly state: State
  readonly steps: readonly ToolStep<State>[]
  readonly commands: readonly ToolCommand[]
  readonly last: ToolStep<State>
}

/** Hands events to a tool one after the other, without carrying out its commands. */
export function playTool<State>(
  tool: Tool<State>,
  scene: Scene,
  events: readonly ToolEvent[],
  from: State = tool.idle,
): Played<State> {
  const steps: ToolStep<State>[] = []
  let state = from
  for (const event of events) {
    const step = tool.step(state, event, scene)
    state = step.state
    steps.push(step)
  }
  const last = steps.at(-1) ?? { state }
  return { state, steps, commands: steps.flatMap(({ command }) => (command ? [command] : [])), last }
}

type At = readonly [number, number]
type Pointer = 'mouse' | 'touch'

export const press = (screen: At, pointer: Pointer = 'mouse'): ToolEvent => ({
  kind: 'press',
  screen,
  pointer,
})
export const drag = (screen: At): ToolEvent => ({ kind: 'drag', screen })
export const release = (screen: At): ToolEvent => ({ kind: 'release', screen })
export const tap = (screen: At, pointer: Pointer = 'mouse'): ToolEvent => ({ kind: 'tap', screen, pointer })

/** Pressed and let go on the spot. */
export const click = (screen: At, pointer: Pointer = 'mouse'): readonly ToolEvent[] => [
  press(screen, pointer),
  release(screen),
]

export const key = (
  name: ToolKey,
  more: { readonly shift?: boolean; readonly alt?: boolean; readonly crosshair?: At } = {},
): ToolEvent => ({
  kind: 'key',
  key: name,
  shift: more.shift ?? false,
  alt: more.alt ?? false,
  crosshair: more.crosshair ?? null,
})

export const KEY_UP: ToolEvent = { kind: 'keyRelease' }
