import { createStore } from 'zustand/vanilla'
import type { PxPoint } from '../core/geometry'
import type { Stroke, VoidProposal } from '../core/trace'

/** The photo that is traced on. */
export interface TracedPhoto {
  readonly slabId: string
  readonly photoId: string
  readonly hash: string
}

/** A hole or crack that the program proposes. */
export interface ProposedVoid extends VoidProposal {
  readonly id: string
}

/** A line that clings to the edge as it is drawn. */
export interface FollowedEdge {
  /** What it will be when it is closed. */
  readonly meaning: 'outline' | 'void' | 'redraw'
  readonly acceptedPx: readonly PxPoint[]
  /** From the end of what is accepted to the pointer. */
  readonly livePx: readonly PxPoint[]
}

/** What is proposed and not yet in the plan: neither saved nor undone, except by taking back. */
export interface TracingState {
  /** What the rest is about; null: nothing is under way. */
  readonly photo: TracedPhoto | null
  readonly strokes: readonly Stroke[]
  /** Found from the strokes; null until something was found. */
  readonly outlinePx: readonly PxPoint[] | null
  readonly isFindingOutline: boolean
  /** Null: not looked for yet. */
  readonly voids: readonly ProposedVoid[] | null
  readonly isFindingVoids: boolean
  /** The proposal that is looked at. */
  readonly chosenVoid: string | null
  /** Null: no line is being drawn. */
  readonly edge: FollowedEdge | null
}

export const NO_TRACING: TracingState = {
  photo: null,
  strokes: [],
  outlinePx: null,
  isFindingOutline: false,
  voids: null,
  isFindingVoids: false,
  chosenVoid: null,
  edge: null,
}

export const tracingStore = createStore<TracingState>(() => NO_TRACING)

/** What is under way on a photo; nothing while it is another's. */
export const tracingOn = (state: TracingState, photoId: string | null | undefined): TracingState =>
  state.photo !== null && state.photo.photoId === photoId ? state : NO_TRACING
