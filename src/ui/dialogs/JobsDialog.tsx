import { useCallback, useEffect, useState } from 'react'
import { useStore } from 'zustand'
import {
  deletePlan,
  duplicatePlan,
  type KeptOriginal,
  listKept,
  listPlans,
  newPlan,
  openPlan,
  type PlanListing,
} from '../../state/planFiles'
import { planStore } from '../../state/planStore'
import { reporting } from '../files/reporting'
import { goToWork } from '../stages/goToWork'
import { t } from '../text/t'
import { DialogFrame } from './DialogFrame'
import { JobRow } from './JobRow'
import { KeptOriginals } from './KeptOriginals'
import { RoomLine } from './RoomLine'

interface Shelf {
  readonly jobs: readonly PlanListing[]
  readonly kept: readonly KeptOriginal[]
}

/** What lies in the browser's storage, and a way to look again. */
function useShelf(): readonly [Shelf | null, () => Promise<unknown>] {
  const [shelf, setShelf] = useState<Shelf | null>(null)
  const look = useCallback(
    () => reporting(async () => setShelf({ jobs: await listPlans(), kept: await listKept() })),
    [],
  )
  useEffect(() => void look(), [look])
  return [shelf, look]
}

/** The jobs kept in this browser. */
export function JobsDialog({ onClose }: { readonly onClose: () => void }) {
  const [shelf, look] = useShelf()
  const openId = useStore(planStore, ({ plan }) => plan.id)

  // A job that did not open says why in a notice behind the dialog, so the dialog closes either way.
  const open = (work: () => Promise<unknown>) => void reporting(work).then(goToWork).then(onClose)
  const change = (work: () => Promise<unknown>) => void reporting(work).then(look)
  return (
    <DialogFrame title={t('jobs-title')} onClose={onClose}>
      <p className="note">{t('jobs-note')}</p>
      <RoomLine />
      <div className="button-row">
        <button type="button" className="button" onClick={() => open(newPlan)}>
          {t('jobs-new')}
        </button>
      </div>
      {shelf === null ? (
        <p>{t('loading')}</p>
      ) : (
        <>
          {shelf.jobs.length === 0 && <p>{t('jobs-none')}</p>}
          <ul className="cards">
            {shelf.jobs.map((stored) => (
              <JobRow
                key={stored.id}
                stored={stored}
                isOpen={stored.id === openId}
                onOpen={() => open(() => openPlan(stored.id))}
                onDuplicate={() => change(() => duplicatePlan(stored.id))}
                onDelete={() => change(() => deletePlan(stored.id))}
              />
            ))}
          </ul>
          <KeptOriginals kept={shelf.kept} />
        </>
      )}
    </DialogFrame>
  )
}
