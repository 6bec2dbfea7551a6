import {
  formatLength,
  inchToMm,
  type LengthDisplay,
  type LengthLimits,
  ok,
  parseLengthWithin,
} from '../../core/units'
import { useDisplay } from '../text/useDisplay'
import type { FieldBasics } from './fieldBasics'
import { type NudgeSize, ParsedField } from './ParsedField'

interface Shared extends FieldBasics {
  readonly limits: LengthLimits
}

interface Props extends Shared {
  readonly valueMm: number
  readonly onChange: (valueMm: number) => void
}

interface OptionalProps extends Shared {
  readonly valueMm: number | null
  /** An emptied box means null. */
  readonly onChange: (valueMm: number | null) => void
  readonly placeholder?: string
}

/** Arrow keys: 1 mm, Shift 10, Alt 0.1; in inches 1/16, Shift 1 inch, Alt 1/32. */
function stepMm(size: NudgeSize, display: LengthDisplay): number {
  const [plain, coarse, fine] =
    display.system === 'mm' ? [1, 10, 0.1] : [inchToMm(1 / 16), inchToMm(1), inchToMm(1 / 32)]
  if (size.fine) return fine
  return size.coarse ? coarse : plain
}

const within = (valueMm: number, limits: LengthLimits): number =>
  Math.min(limits.greatestMm, Math.max(limits.leastMm, valueMm))

/** Tenths of a millimetre are shown only where there are some. */
function lengthText(valueMm: number | null, display: LengthDisplay): string {
  if (valueMm === null) return ''
  const tenths = Math.round(valueMm * 10)
  return formatLength(valueMm, display, { precision: tenths % 10 === 0 ? 1 : 0.1 })
}

/** A length that may be left empty. Reads what makers type, in the units shown. */
export function OptionalLengthField(props: OptionalProps) {
  const display = useDisplay()
  const { valueMm, limits, onChange } = props
  const onNudge = (size: NudgeSize) => {
    if (valueMm !== null) onChange(within(valueMm + size.direction * stepMm(size, display), limits))
  }
  return (
    <ParsedField<number | null>
      {...props}
      shown={lengthText(valueMm, display)}
      inputMode={display.system === 'mm' && limits.leastMm >= 0 ? 'decimal' : 'text'}
      parse={(text) => (text.trim() === '' ? ok(null) : parseLengthWithin(text, display, limits))}
      onCommit={onChange}
      onNudge={onNudge}
    />
  )
}

/** A length. Reads what makers type, in the units shown. */
export function LengthField(props: Props) {
  const display = useDisplay()
  const { valueMm, limits, onChange } = props
  return (
    <ParsedField<number>
      {...props}
      shown={lengthText(valueMm, display)}
      inputMode={display.system === 'mm' && limits.leastMm >= 0 ? 'decimal' : 'text'}
      parse={(text) => parseLengthWithin(text, display, limits)}
      onCommit={onChange}
      onNudge={(size) => onChange(within(valueMm + size.direction * stepMm(size, display), limits))}
    />
  )
}
