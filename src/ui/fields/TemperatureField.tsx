import { celsiusToFahrenheit, fahrenheitToCelsius, ok, parseNumberWithin } from '../../core/units'
import { useDisplay } from '../text/useDisplay'
import { plainNumber } from './OptionalNumberField'
import type { FieldBasics } from './fieldBasics'
import { ParsedField } from './ParsedField'

interface Props extends FieldBasics {
  readonly celsius: number | null
  readonly leastC?: number
  readonly greatestC?: number
  /** A difference of two temperatures: 9 °F are 5 K, whatever the zero. */
  readonly isDifference?: boolean
  readonly placeholder?: string
  /** An emptied box means null; left out where there must be a figure. */
  readonly onEmpty?: () => void
  readonly onChange: (celsius: number) => void
}

const PER_KELVIN = 9 / 5

/** The way from °C to what is shown, and back. */
function scaleOf(isFahrenheit: boolean, isDifference: boolean) {
  if (!isFahrenheit) return { shown: (c: number) => c, kept: (c: number) => c }
  return isDifference
    ? { shown: (k: number) => k * PER_KELVIN, kept: (f: number) => f / PER_KELVIN }
    : { shown: celsiusToFahrenheit, kept: fahrenheitToCelsius }
}

const tenths = (value: number): number => Math.round(value * 10) / 10

/** A temperature in °C, or in °F where lengths are in inches; arrow keys 1 °, Shift 10 °. */
export function TemperatureField(props: Props) {
  const { celsius, leastC = -40, greatestC = 100, onEmpty, onChange } = props
  const isFahrenheit = useDisplay().system === 'inch'
  const { shown, kept } = scaleOf(isFahrenheit, props.isDifference === true)
  const limits = { least: tenths(shown(leastC)), greatest: tenths(shown(greatestC)) }
  const commit = (value: number | null) => {
    if (value === null) onEmpty?.()
    else onChange(Math.min(greatestC, Math.max(leastC, tenths(kept(value)))))
  }
  return (
    <ParsedField<number | null>
      {...props}
      shown={celsius === null ? '' : plainNumber(tenths(shown(celsius)))}
      inputMode="decimal"
      parse={(text) =>
        text.trim() === '' && onEmpty !== undefined ? ok(null) : parseNumberWithin(text, limits)
      }
      onCommit={commit}
      onNudge={({ direction, coarse }) => {
        if (celsius !== null) commit(shown(celsius) + direction * (coarse ? 10 : 1))
      }}
      suffix={<span className="field-suffix">{isFahrenheit ? '°F' : '°C'}</span>}
    />
  )
}
