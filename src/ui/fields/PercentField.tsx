import { formatPercent, parsePercent } from '../../core/units'
import type { FieldBasics } from './fieldBasics'
import { ParsedField } from './ParsedField'

interface Props extends FieldBasics {
  /** 0 to 1. */
  readonly fraction: number
  readonly onChange: (fraction: number) => void
}

/** Per cent of something; arrow keys 1 %, Shift 10 %. */
export function PercentField(props: Props) {
  const { fraction, onChange } = props
  const decimals = Math.round(fraction * 1000) % 10 === 0 ? 0 : 1
  return (
    <ParsedField<number>
      {...props}
      shown={formatPercent(fraction, { decimals })}
      inputMode="decimal"
      parse={(text) => parsePercent(text)}
      onCommit={onChange}
      onNudge={({ direction, coarse }) =>
        onChange(Math.min(1, Math.max(0, Math.round(fraction * 100 + direction * (coarse ? 10 : 1)) / 100)))
      }
    />
  )
}
