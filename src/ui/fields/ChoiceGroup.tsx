import { useId } from 'react'

interface Props<T extends string> {
  readonly label: string
  readonly labelHidden?: boolean
  readonly options: readonly { readonly value: T; readonly label: string }[]
  readonly value: T
  readonly onChange: (value: T) => void
}

/** One of a few: radio buttons drawn as one row. */
export function ChoiceGroup<T extends string>(props: Props<T>) {
  const name = useId()
  return (
    <fieldset className="choice">
      <legend className={props.labelHidden === true ? 'unseen' : 'field-label'}>{props.label}</legend>
      <div className="choice-row">
        {props.options.map((option) => (
          <label key={option.value} className="choice-option">
            <input
              type="radio"
              name={name}
              value={option.value}
              checked={option.value === props.value}
              onChange={() => props.onChange(option.value)}
            />
            <span>{option.label}</span>
          </label>
        ))}
      </div>
    </fieldset>
  )
}
