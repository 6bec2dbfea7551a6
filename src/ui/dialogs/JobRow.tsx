import { useState } from 'react'
import { type PlanListing, storedPlanFile } from '../../state/planFiles'
import { handOut } from '../files/handOut'
import { reporting } from '../files/reporting'
import { t } from '../text/t'

interface Props {
  readonly stored: PlanListing
  readonly isOpen: boolean
  readonly onOpen: () => void
  readonly onDuplicate: () => void
  readonly onDelete: () => void
}

const when = (atMs: number): string =>
  new Date(atMs).toLocaleString([], { dateStyle: 'medium', timeStyle: 'short' })

/** What is stored, read or not: the way out for a job that cannot be opened. */
async function handOutStored({ id, name }: PlanListing): Promise<void> {
  const file = await reporting(() => storedPlanFile(id))
  if (file !== null) handOut(file, `${name}.json`)
}

/** Deleting cannot be undone, so it takes a second press. */
function DeleteButton({ name, onDelete }: { readonly name: string; readonly onDelete: () => void }) {
  const [isSure, setSure] = useState(false)
  return (
    <button
      type="button"
      className="button button-small"
      onBlur={() => setSure(false)}
      onClick={isSure ? onDelete : () => setSure(true)}
    >
      {t(isSure ? 'jobs-delete-sure' : 'jobs-delete')}
      <span className="unseen"> {name}</span>
    </button>
  )
}

/** One job of this browser, and what can be done with it. */
export function JobRow({ stored, isOpen, onOpen, onDuplicate, onDelete }: Props) {
  const name = <span className="unseen"> {stored.name}</span>
  return (
    <li className="card" data-selected={isOpen ? '' : undefined}>
      <div className="row-head">
        <strong>{stored.name}</strong>
        <span className="note">{when(stored.savedAtMs)}</span>
      </div>
      {stored.invented && <p className="note">{t('jobs-invented')}</p>}
      <div className="button-row">
        {isOpen ? (
          <p className="jobs-open">{t('jobs-is-open')}</p>
        ) : (
          <button type="button" className="button button-main button-small" onClick={onOpen}>
            {t('jobs-open')}
            {name}
          </button>
        )}
        <button type="button" className="button button-small" onClick={onDuplicate}>
          {t('jobs-duplicate')}
          {name}
        </button>
        <button type="button" className="button button-small" onClick={() => void handOutStored(stored)}>
          {t('jobs-to-file')}
          {name}
        </button>
        <DeleteButton name={stored.name} onDelete={onDelete} />
      </div>
    </li>
  )
}
