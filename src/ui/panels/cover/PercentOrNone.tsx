import { OptionalNumberField } from '../../fields/OptionalNumberField'
import { t } from '../../text/t'

interface Props {
  readonly label: string
  /** 0 to 1; null: not known. */
  readonly fraction: number | null
  readonly greatest: number
  readonly onChange: (fraction: number | null) => void
}

/** Per cent of something that may not be known. */
export function PercentOrNone({ label, fraction, greatest, onChange }: Props) {
  return (
    <OptionalNumberField
      label={label}
      placeholder={t('slabs-unknown')}
      value={fraction === null ? null : Math.round(fraction * 1000) / 10}
      limits={{ least: 0, greatest: greatest * 100 }}
      suffix="%"
      onChange={(percent) => onChange(percent === null ? null : percent / 100)}
    />
  )
}
