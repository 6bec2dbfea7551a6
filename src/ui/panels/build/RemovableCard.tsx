import type { ReactNode } from 'react'
import { bt } from './bt'

interface Props {
  readonly title: string
  readonly onRemove: () => void
  readonly children: ReactNode
}

/** An entry of a list that the maker keeps, with the button that takes it off. */
export function RemovableCard({ title, onRemove, children }: Props) {
  return (
    <li className="card">
      <div className="row-head">
        <strong>{title}</strong>
        <button type="button" className="button button-small" onClick={onRemove}>
          {bt('remove')}
          <span className="unseen"> {title}</span>
        </button>
      </div>
      {children}
    </li>
  )
}
