import type { Point } from '../geometry'
import type { AdjustmentInput } from './adjustment'
import type { Camera } from './camera'
import type { ScaleProblem } from './scaleInput'

export interface StartingView {
  readonly camera: Camera
  /** In the camera's plane frame, one for each mark of the network. */
  readonly marks: readonly Point[]
  /** What is assumed of the two turns when the references do not tell the tilt; else null. */
  readonly tiltPriors: AdjustmentInput['priors'] | null
  readonly problems: readonly ScaleProblem[]
}
