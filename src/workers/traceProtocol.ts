import type { PxPoint } from '../core/geometry'
import type { Stroke, VoidProposal } from '../core/trace'

/** One step of a line that clings to the edge. `lineId` names the line: a worker that was started anew does not know it. */
export type FollowStep =
  | { readonly kind: 'start'; readonly at: PxPoint }
  | { readonly kind: 'move'; readonly at: PxPoint; readonly isStraight: boolean }
  /** Leads the line there and accepts it to its end. */
  | { readonly kind: 'pin'; readonly at: PxPoint; readonly isStraight: boolean }
  | { readonly kind: 'takeBack' }

/** What the trace worker can be asked to do. `hash` names the photo that was opened last. */
export type TraceTask =
  /** Decodes a photo upright and keeps its pixels in the place of the one before. */
  | { readonly kind: 'open'; readonly hash: string; readonly bytes: Blob }
  | { readonly kind: 'outline'; readonly hash: string; readonly strokes: readonly Stroke[] }
  | { readonly kind: 'voids'; readonly hash: string; readonly outlinePx: readonly PxPoint[] }
  | { readonly kind: 'follow'; readonly hash: string; readonly lineId: string; readonly step: FollowStep }
  /** Gets ready to follow edges, so that the first move is as quick as the others. */
  | { readonly kind: 'warm'; readonly hash: string }

/** Points as one list of x and y: thousands of pairs would take longer to copy than to find. */
export type FlatPoints = Float64Array

export type TraceAnswer =
  | { readonly kind: 'ready' }
  | { readonly kind: 'outline'; readonly ringPx: FlatPoints }
  | { readonly kind: 'voids'; readonly proposals: readonly VoidProposal[] }
  /** Of what was accepted by the answer before, the first `kept` points hold; then come those that were added. */
  | {
      readonly kind: 'line'
      readonly kept: number
      readonly added: FlatPoints
      readonly live: FlatPoints
    }
