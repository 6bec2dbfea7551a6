import { useStore } from 'zustand'
import { type PlainKey, t } from '../text/t'
import { pictureStore } from './photo/pictureStore'
import { contentBounds } from './scene'
import type { Scene } from './tools/toolTypes'

interface Props {
  readonly scene: Scene
}

/** What to do first, when the view has nothing to show; or what has become of the photo. */
export function CanvasNote({ scene }: Props) {
  const status = useStore(pictureStore, (pictures) => pictures.status)
  const key = emptyKey(scene) ?? photoKey(scene, status)
  return key === null ? null : <p className="canvas-note">{t(key)}</p>
}

function emptyKey(scene: Scene): PlainKey | null {
  if (!scene.slab) return 'canvas-empty-no-slab'
  if (contentBounds(scene)) return null
  switch (scene.view) {
    case 'photo':
      return 'canvas-empty-no-photo'
    case 'above':
      return scene.slab.capture.kind === 'stations' ? 'canvas-empty-no-stations' : 'canvas-empty-no-scale'
    case 'table':
      return 'canvas-empty-no-table'
  }
}

function photoKey({ view }: Scene, status: string): PlainKey | null {
  if (view !== 'photo') return null
  if (status === 'opening') return 'canvas-photo-opening'
  return status === 'lost' ? 'canvas-photo-lost' : null
}
