import { ok, problem } from '../../core/units'
import type { FieldBasics } from './fieldBasics'
import { ParsedField } from './ParsedField'

interface Props extends FieldBasics {
  readonly value: string
  readonly onChange: (value: string) => void
  /** Refuses an empty text, for names. */
  readonly needed?: boolean
  readonly placeholder?: string
}

/** Longest text of a field, as the plan allows (core/plan/schema.ts). */
const GREATEST_LENGTH = 200

/** A short text. */
export function TextField(props: Props) {
  return (
    <ParsedField<string>
      {...props}
      shown={props.value}
      maxLength={GREATEST_LENGTH}
      parse={(text) =>
        props.needed === true && text.trim() === '' ? problem('text-empty') : ok(text.trim())
      }
      onCommit={props.onChange}
    />
  )
}
