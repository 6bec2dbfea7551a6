import { newId } from '../../state/newId'
import { planStore } from '../../state/planStore'
import { sessionStore } from '../../state/sessionStore'
import { tracingOn, tracingStore } from '../../state/tracingStore'
import { planResultOf } from '../usePlanResult'
import { canvasStore } from './canvasStore'
import { sceneModel, type SceneModel, startingCamera } from './scene'
import type { Scene } from './tools/toolTypes'
import { type Camera, type Size } from './view'

/** The bench as it is settled, without the draft of a running gesture. */
export function settledModel(): SceneModel {
  const { plan } = planStore.getState()
  return sceneModel(plan, planResultOf(plan), sessionStore.getState(), newId)
}

/** Each slab has its own camera in each view, and in each of its photos; the table's belongs to the option. */
export const cameraKey = ({ view, option, slab, photo }: SceneModel): string =>
  `${view}/${(view === 'table' ? option?.id : slab?.id) ?? ''}/${view === 'photo' ? (photo?.id ?? '') : ''}`

export const cameraOf = (model: SceneModel, cameras: ReadonlyMap<string, Camera>, size: Size): Camera =>
  cameras.get(cameraKey(model)) ?? startingCamera(model, size)

/** What a tool gets to see now. */
export function currentScene(): Scene {
  const model = settledModel()
  const { cameras, size, isStraightHeld } = canvasStore.getState()
  const tracing = tracingOn(tracingStore.getState(), model.photo?.id)
  const followsEdge = model.followsEdge && !isStraightHeld
  return { ...model, tracing, followsEdge, camera: cameraOf(model, cameras, size), size }
}

/** Moves or zooms the current view. */
export function changeCamera(change: (camera: Camera, size: Size) => Camera): void {
  const model = settledModel()
  const { cameras, size } = canvasStore.getState()
  const camera = change(cameraOf(model, cameras, size), size)
  const key = cameraKey(model)
  if (cameras.get(key) !== camera) canvasStore.setState({ cameras: new Map(cameras).set(key, camera) })
}

/** Back to showing everything. */
export function forgetCamera(): void {
  const key = cameraKey(settledModel())
  canvasStore.setState(({ cameras }) => ({
    cameras: new Map([...cameras].filter(([other]) => other !== key)),
  }))
}
