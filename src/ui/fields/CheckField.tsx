interface Props {
  readonly label: string
  readonly checked: boolean
  readonly onChange: (checked: boolean) => void
}

export function CheckField({ label, checked, onChange }: Props) {
  return (
    <label className="check">
      <input type="checkbox" checked={checked} onChange={(event) => onChange(event.currentTarget.checked)} />
      <span>{label}</span>
    </label>
  )
}
