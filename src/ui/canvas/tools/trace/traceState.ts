import type { PxPoint } from '../../../../core/geometry'
import type { Aiming } from '../aim'
import type { Grab } from '../grab'
import type { PointDrag } from '../pointDrag'

export type TraceMeaning = 'outline' | 'void'

export type TraceState =
  /** No unfinished ring: rings that are there can be changed, a tap starts a new one. */
  | {
      readonly kind: 'open'
      readonly grab: Grab
      readonly aiming: Aiming | null
      /** Points of a ring let go by Escape: undo brings them back. */
      readonly dropped: readonly PxPoint[]
    }
  | {
      readonly kind: 'drawing'
      readonly points: readonly PxPoint[]
      readonly aiming: Aiming | null
      /** One of the points set already, being dragged. */
      readonly dragging: { readonly index: number; readonly drag: PointDrag } | null
    }

export type Open = Extract<TraceState, { kind: 'open' }>
export type Drawing = Extract<TraceState, { kind: 'drawing' }>

export const drawingOf = (points: readonly PxPoint[]): Drawing => ({
  kind: 'drawing',
  points,
  aiming: null,
  dragging: null,
})
