import { createStore } from 'zustand/vanilla'
import { newId } from './newId'

export interface RunningJob {
  readonly id: string
  /** Key of what is being done in the catalogue. */
  readonly kind: string
  readonly progress: number
  readonly cancel: () => void
}

interface JobState {
  readonly jobs: readonly RunningJob[]
}

export const jobStore = createStore<JobState>(() => ({ jobs: [] }))

export interface JobHandle {
  readonly signal: AbortSignal
  readonly onProgress: (fraction: number) => void
}

const patchJob = (id: string, progress: number): void =>
  jobStore.setState(({ jobs }) => ({ jobs: jobs.map((job) => (job.id === id ? { ...job, progress } : job)) }))

/**
 * Shows a piece of worker's work in the job list while it runs.
 * @param work is given a signal that the list's Cancel sets off, and a function to report progress (0 to 1) with
 * @param patienceMs work that is done sooner does not show
 */
export async function trackJob<T>(
  kind: string,
  work: (handle: JobHandle) => Promise<T>,
  patienceMs = 0,
): Promise<T> {
  const id = newId()
  const abort = new AbortController()
  let progress = 0
  const show = (): void =>
    jobStore.setState(({ jobs }) => ({
      jobs: [...jobs, { id, kind, progress, cancel: () => abort.abort() }],
    }))
  const timer = patienceMs > 0 ? setTimeout(show, patienceMs) : null
  if (timer === null) show()
  const onProgress = (fraction: number): void => {
    progress = fraction
    patchJob(id, fraction)
  }
  try {
    return await work({ signal: abort.signal, onProgress })
  } finally {
    if (timer !== null) clearTimeout(timer)
    jobStore.setState(({ jobs }) => ({ jobs: jobs.filter((other) => other.id !== id) }))
  }
}
