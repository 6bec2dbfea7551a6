import { useId } from 'react'

interface Props<T extends string> {
  readonly label: string
  readonly labelHidden?: boolean
  readonly options: readonly { readonly value: T; readonly label: string }[]
  readonly value: T
  readonly onChange: (value: T) => void
}

/** One of many. */
export function SelectField<T extends string>({ label, labelHidden, options, value, onChange }: Props<T>) {
  const id = useId()
  return (
    <div className="field">
      <label htmlFor={id} className={labelHidden === true ? 'unseen' : 'field-label'}>
        {label}
      </label>
      <select
        id={id}
        className="select"
        value={value}
        onChange={(event) => {
          const chosen = options.find((option) => option.value === event.currentTarget.value)
          if (chosen !== undefined) onChange(chosen.value)
        }}
      >
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
      </select>
    </div>
  )
}
