import { useId } from 'react'

interface Props {
  readonly label: string
  /** The value in words, read out and shown. */
  readonly text: string
  readonly value: number
  readonly least: number
  readonly greatest: number
  readonly step: number
  /** While the handle moves: nothing is kept yet. */
  readonly onMove: (value: number) => void
  /** The handle was let go, or a key was pressed. */
  readonly onSettle: (value: number) => void
}

/** A slider: results follow it while it moves, and one step is kept when it is let go. */
export function RangeField({ label, text, value, least, greatest, step, onMove, onSettle }: Props) {
  const id = useId()
  const settle = (event: { readonly currentTarget: HTMLInputElement }) =>
    onSettle(event.currentTarget.valueAsNumber)
  return (
    <div className="range-field">
      <label htmlFor={id} className="field-label">
        {label}
      </label>
      <output htmlFor={id}>{text}</output>
      <input
        id={id}
        type="range"
        min={least}
        max={greatest}
        step={step}
        value={value}
        aria-valuetext={text}
        onChange={(event) => onMove(event.currentTarget.valueAsNumber)}
        onPointerUp={settle}
        onPointerCancel={settle}
        onKeyUp={settle}
        onBlur={settle}
      />
    </div>
  )
}
