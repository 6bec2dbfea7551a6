import type { Isometry, Point } from '../../core/geometry'
import { movedPose, turnedPose } from '../canvas/poseEdits'
import { AngleField } from '../fields/AngleField'
import { LengthField } from '../fields/LengthField'
import { t } from '../text/t'

interface Props {
  readonly pose: Isometry
  /** The point of it whose place is shown and typed. */
  readonly at: Point
  /** Stays where it is when the angle is typed. */
  readonly middle: Point
  /** What the two lengths are called. */
  readonly xLabel: string
  readonly yLabel: string
  readonly onChange: (pose: Isometry) => void
}

const PLACE_LIMITS = { leastMm: -20_000, greatestMm: 20_000 }

/** Place and angle of something rigid: what a drag does, typed. */
export function PoseFields({ pose, at, middle, xLabel, yLabel, onChange }: Props) {
  return (
    <div className="field-grid">
      <LengthField
        label={xLabel}
        valueMm={at[0]}
        limits={PLACE_LIMITS}
        onChange={(mm) => onChange(movedPose(pose, mm - at[0], 0))}
      />
      <LengthField
        label={yLabel}
        valueMm={at[1]}
        limits={PLACE_LIMITS}
        onChange={(mm) => onChange(movedPose(pose, 0, mm - at[1]))}
      />
      <AngleField
        label={t('pose-angle')}
        angleRad={pose.angleRad}
        onChange={(angleRad) => onChange(turnedPose(pose, middle, angleRad - pose.angleRad))}
      />
    </div>
  )
}
