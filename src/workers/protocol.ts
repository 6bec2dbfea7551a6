import type {
  ClickedThing,
  PhotoSharpness,
  PixelArea,
  RectifyingTransform,
  RefinedClick,
} from '../core/photo'
import type { InputProblem } from '../core/units'

export interface PhotoSize {
  readonly widthPx: number
  readonly heightPx: number
}

export interface ReducedPhoto extends PhotoSize {
  readonly blob: Blob
}

/** What the photo worker can be asked to do. `hash` names a photo that was opened before. */
export type PhotoTask =
  /** Decodes a photo upright and keeps its pixels in the worker. */
  | { readonly kind: 'open'; readonly hash: string; readonly bytes: Blob }
  | { readonly kind: 'preview'; readonly hash: string; readonly maxSidePx: number }
  | {
      readonly kind: 'crop'
      readonly hash: string
      readonly area: PixelArea
      readonly outWidthPx: number
      readonly outHeightPx: number
    }
  /** The slab from straight above. A newer one of the same photo takes the place of an older one. */
  | { readonly kind: 'rectify'; readonly hash: string; readonly transform: RectifyingTransform }
  /** Looks at the full-resolution pixels round clicks, and says where the clicked thing stands. */
  | { readonly kind: 'refine'; readonly hash: string; readonly thing: ClickedThing }
  /** Whether the photo is shaken or out of focus. */
  | { readonly kind: 'sharpness'; readonly hash: string }
  /** A smaller JPEG of a photo that is too large to be worked. */
  | { readonly kind: 'reduce'; readonly bytes: Blob; readonly mostMegapixels: number }
  | { readonly kind: 'close'; readonly hash: string }

export type PhotoAnswer =
  | { readonly kind: 'size'; readonly size: PhotoSize }
  | { readonly kind: 'bitmap'; readonly bitmap: ImageBitmap }
  | { readonly kind: 'reduced'; readonly photo: ReducedPhoto }
  | { readonly kind: 'refined'; readonly clicks: readonly RefinedClick[] }
  | { readonly kind: 'sharpness'; readonly sharpness: PhotoSharpness }
  | { readonly kind: 'closed' }

/** From the page to a worker. */
export type ToWorker<Task> =
  | { readonly kind: 'job'; readonly jobId: number; readonly task: Task }
  | { readonly kind: 'cancel'; readonly jobId: number }

/** From a worker to the page: any number of `progress`, then one of the others. */
export type FromWorker<Answer> =
  | { readonly kind: 'progress'; readonly jobId: number; readonly fraction: number }
  | { readonly kind: 'done'; readonly jobId: number; readonly answer: Answer }
  | { readonly kind: 'failed'; readonly jobId: number; readonly problem: InputProblem }
  | { readonly kind: 'cancelled'; readonly jobId: number }
