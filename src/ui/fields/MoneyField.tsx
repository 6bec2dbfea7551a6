import { formatMoneyPlain, ok, parseMoneyCents } from '../../core/units'
import { useShownPlan } from '../useActive'
import type { FieldBasics } from './fieldBasics'
import { ParsedField } from './ParsedField'

interface Props extends FieldBasics {
  readonly cents: number | null
  /** An emptied box means null. */
  readonly onChange: (cents: number | null) => void
}

/** As the plan allows (core/plan/schema.ts). */
const LIMITS = { leastCents: 0, greatestCents: 1_000_000_000 }

/** An amount of money, to the cent, in the maker's own currency; may be left empty. */
export function MoneyField(props: Props) {
  const { currency } = useShownPlan().shop
  return (
    <ParsedField<number | null>
      {...props}
      shown={props.cents === null ? '' : formatMoneyPlain(props.cents)}
      inputMode="decimal"
      parse={(text) => (text.trim() === '' ? ok(null) : parseMoneyCents(text, LIMITS))}
      onCommit={props.onChange}
      suffix={<span className="field-suffix">{currency}</span>}
    />
  )
}
