import { useEffect } from 'react'
import { useStore } from 'zustand'
import { createStore } from 'zustand/vanilla'
import type { Point } from '../../core/geometry'
import type { Selection } from '../../state/sessionStore'
import { handlesOf } from './handles'
import type { HandleKind, Scene } from './tools/toolTypes'
import { isOnScreen } from './view'

/** Where something on the canvas is: for the list beside it. */
export interface CanvasPosition {
  readonly id: string
  readonly kind: HandleKind
  readonly label: string
  readonly selection: Selection | null
  /** CSS px in the browser's window. */
  readonly x: number
  readonly y: number
  readonly isVisible: boolean
  /** In the slab's frame, mm; null while it has no scale. */
  readonly slabMm: Point | null
  /** In the photo, px; null where there is none. */
  readonly photoPx: Point | null
}

export type CanvasPositions = ReadonlyMap<string, CanvasPosition>

const positionStore = createStore<CanvasPositions>(() => new Map<string, CanvasPosition>())

/** Handles of the canvas by id: `mark/<id>`, `trace/<id>`, `trace/<id>/<point>`, `datum/from`, `footprint`, `turn`, `cut/<id>`, `piece/<key>`, `placement/<id>`. */
export const useCanvasPositions = (): CanvasPositions => useStore(positionStore)

/** Keeps the positions up to date while nothing is being dragged. */
export function usePublishedPositions(scene: Scene, isDragging: boolean, host: HTMLElement | null): void {
  useEffect(() => {
    if (isDragging || !host) return
    const publish = (): void => positionStore.setState(positionsOf(scene, host), true)
    const frame = requestAnimationFrame(publish)
    window.addEventListener('scroll', publish, true)
    return () => {
      cancelAnimationFrame(frame)
      window.removeEventListener('scroll', publish, true)
    }
  }, [scene, isDragging, host])
}

function positionsOf(scene: Scene, host: HTMLElement): CanvasPositions {
  const { left, top } = host.getBoundingClientRect()
  return new Map(
    handlesOf(scene).map(({ id, kind, label, selection, screen, world }) => [
      id,
      {
        id,
        kind,
        label,
        selection,
        x: left + screen[0],
        y: top + screen[1],
        isVisible: isOnScreen(screen, scene.size),
        slabMm: scene.frames.slabFromWorld(world),
        photoPx: scene.frames.pxFromWorld(world),
      },
    ]),
  )
}
