import { useMemo } from 'react'
import { useStore } from 'zustand'
import { useShallow } from 'zustand/react/shallow'
import { newId } from '../../state/newId'
import { planStore } from '../../state/planStore'
import { sessionStore } from '../../state/sessionStore'
import { planResultOf } from '../usePlanResult'
import { canvasStore } from './canvasStore'
import { cameraOf } from './currentScene'
import { sceneModel } from './scene'
import { NO_TRACING } from '../../state/tracingStore'
import type { Scene } from './tools/toolTypes'

export interface Scenes {
  /** The bench without the draft of a running gesture. */
  readonly settled: Scene
  /** With the draft; the very same object when there is none. */
  readonly shown: Scene
}

/** The bench on screen, as it is settled and as a running gesture would leave it. */
export function useScenes(): Scenes {
  const plan = useStore(planStore, (state) => state.plan)
  const draft = useStore(sessionStore, (session) => session.draft)
  const session = useStore(
    sessionStore,
    useShallow((state) => ({
      slabId: state.slabId,
      photoId: state.photoId,
      optionId: state.optionId,
      stage: state.stage,
      view: state.view,
      tool: state.tool,
      selection: state.selection,
      boardSize: state.boardSize,
      ruleSize: state.ruleSize,
      showsWeak: state.showsWeak,
      followsEdge: state.followsEdge,
      pushRadiusPx: state.pushRadiusPx,
    })),
  )
  const cameras = useStore(canvasStore, (state) => state.cameras)
  const size = useStore(canvasStore, (state) => state.size)
  const model = useMemo(() => sceneModel(plan, planResultOf(plan), session, newId), [plan, session])
  const drafted = useMemo(
    () => (draft ? sceneModel(draft, planResultOf(draft), session, newId) : null),
    [draft, session],
  )
  const settled = useMemo(
    () => ({ ...model, tracing: NO_TRACING, camera: cameraOf(model, cameras, size), size }),
    [model, cameras, size],
  )
  const shown = useMemo(
    () =>
      drafted
        ? withSettledTray({ ...drafted, tracing: NO_TRACING, camera: settled.camera, size }, settled)
        : settled,
    [drafted, settled, size],
  )
  return { settled, shown }
}

/** While a piece is dragged out of the tray the others stay where they are. */
function withSettledTray(shown: Scene, settled: Scene): Scene {
  const left = new Set(shown.tray.map(({ piece }) => piece.anchor.join()))
  return { ...shown, tray: settled.tray.filter(({ piece }) => left.has(piece.anchor.join())) }
}
