import type { ReactNode } from 'react'

interface Props {
  readonly title: string
  readonly children: ReactNode
  readonly isOpen?: boolean
}

/** A group of inputs that can be folded away. */
export function MoreInputs({ title, children, isOpen = false }: Props) {
  return (
    <details className="more-inputs" open={isOpen}>
      <summary>{title}</summary>
      <div className="more-body">{children}</div>
    </details>
  )
}
