import { useStore } from 'zustand'
import { formatPercent } from '../core/units'
import { jobStore } from '../state/jobStore'
import { isTextKey, t } from './text/t'

/** What a worker is busy with, how far it is, and the way to stop it. */
export function RunningJobs() {
  const jobs = useStore(jobStore, (state) => state.jobs)
  if (jobs.length === 0) return null
  return (
    <ul className="running-jobs">
      {jobs.map((job) => {
        const what = isTextKey(job.kind) ? t(job.kind) : t('loading')
        const percent = formatPercent(job.progress, { decimals: 0 })
        return (
          <li key={job.id}>
            <label>
              {t('job-running', { what, percent })}
              <progress max={1} value={job.progress} />
            </label>
            <button type="button" className="button button-small" onClick={job.cancel}>
              {t('job-cancel')}
            </button>
          </li>
        )
      })}
    </ul>
  )
}
