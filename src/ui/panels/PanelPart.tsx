import { type ReactNode, useId } from 'react'

interface Props {
  readonly title: string
  readonly note?: string
  readonly children: ReactNode
}

/** One part of a stage's panel, with its heading. */
export function PanelPart({ title, note, children }: Props) {
  const id = useId()
  return (
    <section className="panel-part" aria-labelledby={id}>
      <h3 id={id}>{title}</h3>
      {note !== undefined && <p className="note">{note}</p>}
      {children}
    </section>
  )
}
