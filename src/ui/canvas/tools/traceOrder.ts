import type { PxPoint } from '../../../core/geometry'
import type { Stroke } from '../../../core/trace'

/** What a tool asks of the tracing worker's desk: done after the step, its outcome seen in `scene.tracing`. */
export type TraceOrder =
  | { readonly kind: 'stroke'; readonly stroke: Stroke }
  | { readonly kind: 'take-back-stroke' }
  | { readonly kind: 'accept-outline' }
  /** A line along the edge begins at `at`; `before` was drawn already. */
  | { readonly kind: 'start-edge'; readonly at: PxPoint; readonly before: readonly PxPoint[] }
  | { readonly kind: 'lead-edge'; readonly at: PxPoint }
  | { readonly kind: 'pin-edge'; readonly at: PxPoint }
  | { readonly kind: 'take-back-edge' }
  | { readonly kind: 'close-edge' }
  | { readonly kind: 'drop-edge' }
  /** The line ends at `at`, and takes the place of the stretch of the trace between its ends. */
  | { readonly kind: 'redraw-edge'; readonly at: PxPoint; readonly traceId: string }
  | { readonly kind: 'push-size'; readonly factor: number }
  | { readonly kind: 'choose-void'; readonly id: string }
  | { readonly kind: 'accept-void'; readonly id: string }
  | { readonly kind: 'drop-void'; readonly id: string }
