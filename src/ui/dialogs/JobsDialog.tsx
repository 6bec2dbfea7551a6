import { useCallback, useEffect, useState } from 'react'
import { useStore } from 'zustand'
import { deletePlan, duplicatePlan, listPlans, newPlan, openPlan } from '../../state/planFiles'
import { planStore } from '../../state/planStore'
import { reporting } from '../files/reporting'
import { goToWork } from '../stages/goToWork'
import { t } from '../text/t'
import { DialogFrame } from './DialogFrame'

type StoredPlan = Awaited<ReturnType<typeof listPlans>>[number]

const when = (atMs: number): string =>
  new Date(atMs).toLocaleString([], { dateStyle: 'medium', timeStyle: 'short' })

interface RowProps {
  readonly stored: StoredPlan
  readonly isOpen: boolean
  readonly onOpen: () => void
  readonly onDuplicate: () => void
  readonly onDelete: () => void
}

/** Deleting cannot be undone, so it takes a second press. */
function JobRow({ stored, isOpen, onOpen, onDuplicate, onDelete }: RowProps) {
  const [isSure, setSure] = useState(false)
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
            <span className="unseen"> {stored.name}</span>
          </button>
        )}
        <button type="button" className="button button-small" onClick={onDuplicate}>
          {t('jobs-duplicate')}
          <span className="unseen"> {stored.name}</span>
        </button>
        <button
          type="button"
          className="button button-small"
          onBlur={() => setSure(false)}
          onClick={isSure ? onDelete : () => setSure(true)}
        >
          {t(isSure ? 'jobs-delete-sure' : 'jobs-delete')}
          <span className="unseen"> {stored.name}</span>
        </button>
      </div>
    </li>
  )
}

/** The jobs kept in this browser. */
export function JobsDialog({ onClose }: { readonly onClose: () => void }) {
  const [stored, setStored] = useState<readonly StoredPlan[] | null>(null)
  const openId = useStore(planStore, ({ plan }) => plan.id)
  const reload = useCallback(() => reporting(async () => setStored(await listPlans())), [])
  useEffect(() => void reload(), [reload])

  const open = (work: () => Promise<unknown>) => void reporting(work).then(goToWork).then(onClose)
  const change = (work: () => Promise<unknown>) => void reporting(work).then(reload)
  return (
    <DialogFrame title={t('jobs-title')} onClose={onClose}>
      <p className="note">{t('jobs-note')}</p>
      <div className="button-row">
        <button type="button" className="button" onClick={() => open(async () => newPlan())}>
          {t('jobs-new')}
        </button>
      </div>
      {stored === null ? (
        <p>{t('loading')}</p>
      ) : (
        <ul className="cards">
          {stored.map((plan) => (
            <JobRow
              key={plan.id}
              stored={plan}
              isOpen={plan.id === openId}
              onOpen={() => open(() => openPlan(plan.id))}
              onDuplicate={() => change(() => duplicatePlan(plan.id))}
              onDelete={() => change(() => deletePlan(plan.id))}
            />
          ))}
        </ul>
      )}
    </DialogFrame>
  )
}
