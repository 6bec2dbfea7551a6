import type { ReactNode } from 'react'
import type { FieldBasics } from './fieldBasics'

interface Props {
  readonly id: string
  readonly basics: FieldBasics
  readonly problem: string | undefined
  readonly children: ReactNode
}

/** Ids of the notes under a field, for aria-describedby. */
export function noteIds(id: string, basics: FieldBasics, problem: string | undefined): string | undefined {
  const ids = [
    problem === undefined ? null : `${id}-problem`,
    basics.issue === undefined ? null : `${id}-issue`,
    basics.hint === undefined ? null : `${id}-hint`,
    basics.noteId ?? null,
  ].filter((noteId) => noteId !== null)
  return ids.length === 0 ? undefined : ids.join(' ')
}

/** A label above, a box, and under it what is wrong and what to know. */
export function FieldFrame({ id, basics, problem, children }: Props) {
  return (
    <div className="field">
      <label htmlFor={id} className={basics.labelHidden === true ? 'unseen' : 'field-label'}>
        {basics.label}
      </label>
      <div className="field-box">{children}</div>
      {problem !== undefined && (
        <p id={`${id}-problem`} className="field-problem" role="alert">
          {problem}
        </p>
      )}
      {basics.issue !== undefined && (
        <p id={`${id}-issue`} className="field-problem">
          {basics.issue}
        </p>
      )}
      {basics.hint !== undefined && (
        <p id={`${id}-hint`} className="field-hint">
          {basics.hint}
        </p>
      )}
    </div>
  )
}
