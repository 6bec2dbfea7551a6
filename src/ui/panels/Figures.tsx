interface Props {
  readonly rows: readonly {
    readonly name: string
    readonly figure: string
    /** How sure it is, `± 6 mm`. */
    readonly plusMinus?: string | undefined
    readonly isTotal?: boolean
  }[]
}

/** Names and figures, one pair a line. */
export function Figures({ rows }: Props) {
  return (
    <dl className="figures">
      {rows.map((row) => (
        <div key={row.name} className={row.isTotal === true ? 'figures-total' : undefined}>
          <dt>{row.name}</dt>
          <dd>
            {row.figure}
            {row.plusMinus !== undefined && <span className="plus-minus"> {row.plusMinus}</span>}
          </dd>
        </div>
      ))}
    </dl>
  )
}
