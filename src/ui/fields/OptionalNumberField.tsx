import { formatNumber, type NumberLimits, ok, parseNumberWithin } from '../../core/units'
import type { FieldBasics } from './fieldBasics'
import { ParsedField } from './ParsedField'

interface Props extends FieldBasics {
  readonly value: number | null
  readonly limits: NumberLimits
  /** An emptied box means null. */
  readonly onChange: (value: number | null) => void
  readonly placeholder?: string
  readonly suffix?: string
}

const GREATEST_DECIMALS = 4

/** As many decimals as the number has, up to four. */
export function plainNumber(value: number): string {
  const decimals = Array.from({ length: GREATEST_DECIMALS }, (_, count) => count).find(
    (count) => Number(value.toFixed(count)) === value,
  )
  return formatNumber(value, { decimals: decimals ?? GREATEST_DECIMALS })
}

/** A plain number that may be left empty; arrow keys 1, Shift 10. */
export function OptionalNumberField(props: Props) {
  const { value, limits, onChange } = props
  const move = (by: number) => {
    if (value !== null) onChange(Math.min(limits.greatest, Math.max(limits.least, value + by)))
  }
  return (
    <ParsedField<number | null>
      {...props}
      shown={value === null ? '' : plainNumber(value)}
      inputMode="decimal"
      parse={(text) => (text.trim() === '' ? ok(null) : parseNumberWithin(text, limits))}
      onCommit={onChange}
      onNudge={({ direction, coarse }) => move(direction * (coarse ? 10 : 1))}
      suffix={props.suffix === undefined ? undefined : <span className="field-suffix">{props.suffix}</span>}
    />
  )
}
