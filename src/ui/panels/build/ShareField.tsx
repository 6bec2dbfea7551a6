import { OptionalNumberField } from '../../fields/OptionalNumberField'
import { bt } from './bt'

interface Props {
  readonly label: string
  /** 0 to 1; null: not said. */
  readonly fraction: number | null
  readonly least?: number
  readonly greatest?: number
  readonly onChange: (fraction: number | null) => void
}

const tenths = (fraction: number): number => Math.round(fraction * 10_000) / 100

/** A share in per cent, with its decimals; may be left empty. */
export function ShareField({ label, fraction, least = 0, greatest = 1, onChange }: Props) {
  return (
    <OptionalNumberField
      label={label}
      value={fraction === null ? null : tenths(fraction)}
      limits={{ least: tenths(least), greatest: tenths(greatest) }}
      suffix={bt('wood-percent')}
      onChange={(share) => onChange(share === null ? null : share / 100)}
    />
  )
}
