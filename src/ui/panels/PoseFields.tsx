import type { Isometry, Point } from '../../core/geometry'
import { turnedPose } from '../canvas/poseEdits'
import { AngleField } from '../fields/AngleField'
import { LengthField } from '../fields/LengthField'
import { t } from '../text/t'

interface Props {
  readonly pose: Isometry
  /** Stays where it is when the angle is typed. */
  readonly middle: Point
  /** What the two lengths are called. */
  readonly xLabel: string
  readonly yLabel: string
  readonly onChange: (pose: Isometry) => void
}

const PLACE_LIMITS = { leastMm: -20_000, greatestMm: 20_000 }

/** Place and angle of something rigid: what a drag does, typed. */
export function PoseFields({ pose, middle, xLabel, yLabel, onChange }: Props) {
  return (
    <div className="field-grid">
      <LengthField
        label={xLabel}
        valueMm={pose.xMm}
        limits={PLACE_LIMITS}
        onChange={(xMm) => onChange({ ...pose, xMm })}
      />
      <LengthField
        label={yLabel}
        valueMm={pose.yMm}
        limits={PLACE_LIMITS}
        onChange={(yMm) => onChange({ ...pose, yMm })}
      />
      <AngleField
        label={t('pose-angle')}
        angleRad={pose.angleRad}
        onChange={(angleRad) => onChange(turnedPose(pose, middle, angleRad - pose.angleRad))}
      />
    </div>
  )
}
