import type { Point } from '../geometry'
import type { Camera } from './camera'
import type { Homography } from './homography'

/**
 * How one photo maps to the slab's plane. Plain data: it may be kept, compared and sent to a worker.
 * The plane frame has its origin at the camera's foot, x right and y down as the face is seen, never mirrored.
 */
export interface SlabScale {
  readonly camera: Camera
  /** Undistorted pixels → plane mm, for the flat plane; with the lens bow and the face out of flat use
   * `planePointFromPx(scale.camera, px)`. */
  readonly homography: Homography
  /** Plane mm → undistorted pixels. */
  readonly inverse: Homography
  /** Σ of θ (order of `CAMERA_PARAMETERS`), 10 × 10 row by row. */
  readonly covariance: readonly number[]
  readonly imageWidthPx: number
  readonly imageHeightPx: number
  readonly markPositions: readonly { readonly markId: string; readonly at: Point }[]
  /** Taped less solved. */
  readonly distanceResiduals: readonly { readonly distanceId: string; readonly residualMm: number }[]
  readonly observationResiduals: readonly { readonly markId: string; readonly residualPx: number }[]
  readonly cameraHeightMm: number
  /** Angle between the line of sight at the picture's middle and the square to the slab: 0 straight from above. */
  readonly tiltRad: number
  readonly focalLength35mm: number
  /** Observations beyond what is unknown; 0 when nothing can be checked. */
  readonly redundancy: number
}
