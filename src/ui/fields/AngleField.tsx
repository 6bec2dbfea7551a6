import { degreesToRadians, formatAngle, parseAngle } from '../../core/units'
import type { FieldBasics } from './fieldBasics'
import { type NudgeSize, ParsedField } from './ParsedField'

interface Props extends FieldBasics {
  readonly angleRad: number
  readonly onChange: (angleRad: number) => void
}

const stepDegrees = ({ coarse, fine }: NudgeSize): number => {
  if (fine) return 0.02
  return coarse ? 5 : 0.2
}

/** An angle in degrees; arrow keys 0.2°, Shift 5°, Alt 0.02° (0.02° is 1 mm over 2.9 m). */
export function AngleField(props: Props) {
  const { angleRad, onChange } = props
  return (
    <ParsedField<number>
      {...props}
      shown={formatAngle(angleRad, { decimals: 2 })}
      parse={(text) => parseAngle(text)}
      onCommit={onChange}
      onNudge={(size) => onChange(angleRad + size.direction * degreesToRadians(stepDegrees(size)))}
    />
  )
}
