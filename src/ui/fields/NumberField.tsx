import { formatNumber, type NumberLimits, parseNumberWithin } from '../../core/units'
import type { FieldBasics } from './fieldBasics'
import { ParsedField } from './ParsedField'

interface Props extends FieldBasics {
  readonly value: number
  readonly limits: NumberLimits
  readonly onChange: (value: number) => void
  readonly decimals?: number
  readonly suffix?: string
}

/** A plain number; arrow keys 1, Shift 10. */
export function NumberField(props: Props) {
  const { value, limits, onChange } = props
  const move = (by: number) => onChange(Math.min(limits.greatest, Math.max(limits.least, value + by)))
  return (
    <ParsedField<number>
      {...props}
      shown={formatNumber(value, { decimals: props.decimals ?? 0 })}
      inputMode="decimal"
      parse={(text) => parseNumberWithin(text, limits)}
      onCommit={onChange}
      onNudge={({ direction, coarse }) => move(direction * (coarse ? 10 : 1))}
      suffix={props.suffix === undefined ? undefined : <span className="field-suffix">{props.suffix}</span>}
    />
  )
}
