interface Props {
  readonly rows: readonly { readonly name: string; readonly figure: string; readonly isTotal?: boolean }[]
}

/** Names and figures, one pair a line. */
export function Figures({ rows }: Props) {
  return (
    <dl className="figures">
      {rows.map((row) => (
        <div key={row.name} className={row.isTotal === true ? 'figures-total' : undefined}>
          <dt>{row.name}</dt>
          <dd>{row.figure}</dd>
        </div>
      ))}
    </dl>
  )
}
