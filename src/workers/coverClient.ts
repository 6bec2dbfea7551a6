import type { CoverFinding, CoverFindings, CoverKind, CoverTask, SearchState } from '../core/layout'
import type { FromCover, ToCover } from './coverProtocol'
import { JobProblem, type WorkerLike } from './workerLink'

/** Two leave the page and the photo worker a core on most phones. */
const MOST_WORKERS = 2
const IDLE_MS = 60_000

export interface CoverOptions<K extends CoverKind> {
  /** Ends the search at once; the promise rejects with the signal's reason. */
  readonly signal?: AbortSignal
  /** A newer search of the same lane takes the place of this one, which rejects with AbortError. */
  readonly lane?: string
  /** Hears of what is found and proved on the way, with a fraction done from 0 to 1. */
  readonly onIncumbent?: (state: SearchState<CoverFindings[K]>, fraction: number) => void
}

interface CoverJob {
  readonly jobId: number
  readonly task: CoverTask
  readonly lane: string | null
  readonly resolve: (state: SearchState<CoverFinding>) => void
  readonly reject: (reason: unknown) => void
  readonly onIncumbent: (state: SearchState<CoverFinding>, fraction: number) => void
}

interface Desk {
  readonly worker: WorkerLike
  job: CoverJob | null
  idleTimer: ReturnType<typeof setTimeout> | null
}

const makeCoverWorker = (): WorkerLike =>
  new Worker(new URL('./cover.worker.ts', import.meta.url), { type: 'module' })

const overtaken = (): DOMException => new DOMException('a newer search took its place', 'AbortError')

/**
 * Searches on a few workers, the rest waiting in order. A search that is cancelled or overtaken is ended with its worker;
 * workers keep nothing, so the next search just starts another.
 */
export class CoverClient {
  readonly #makeWorker: () => WorkerLike
  readonly #mostWorkers: number
  readonly #idleMs: number
  readonly #desks = new Set<Desk>()
  readonly #waiting: CoverJob[] = []
  #lastJobId = 0

  constructor(makeWorker: () => WorkerLike = makeCoverWorker, mostWorkers = MOST_WORKERS, idleMs = IDLE_MS) {
    this.#makeWorker = makeWorker
    this.#mostWorkers = mostWorkers
    this.#idleMs = idleMs
  }

  /**
   * @returns the search's last state: its incumbent is null when nothing serves; it is proved as closely as
   *   COVER_TOLERANCES say, or as far as value and bound differ
   * Rejects with JobProblem (the task's own problem, 'cover-worker-crashed'), AbortError when overtaken, or the signal's
   * reason.
   */
  search<K extends CoverKind>(
    task: Extract<CoverTask, { kind: K }>,
    options: CoverOptions<K> = {},
  ): Promise<SearchState<CoverFindings[K]>> {
    const { signal, lane = null } = options
    if (signal?.aborted === true) return Promise.reject(signal.reason)
    const jobId = ++this.#lastJobId
    // The worker answers with what the task's kind finds.
    const own = (state: SearchState<CoverFinding>) => state as SearchState<CoverFindings[K]>
    const answer = new Promise<SearchState<CoverFinding>>((resolve, reject) => {
      if (lane !== null) this.#endWhere((job) => job.lane === lane, overtaken())
      const onIncumbent = (state: SearchState<CoverFinding>, fraction: number): void =>
        options.onIncumbent?.(own(state), fraction)
      this.#waiting.push({ jobId, task, lane, resolve, reject, onIncumbent })
    })
    const cancel = (): void => this.#endWhere((job) => job.jobId === jobId, signal?.reason)
    signal?.addEventListener('abort', cancel, { once: true })
    this.#startWaiting()
    return answer.then(own).finally(() => signal?.removeEventListener('abort', cancel))
  }

  /** Ends all workers for good, with what they had in hand. */
  end(): void {
    this.#endWhere(() => true, new JobProblem({ code: 'cover-worker-ended', values: {} }))
    for (const desk of this.#desks) this.#dismiss(desk)
  }

  #endWhere(isMeant: (job: CoverJob) => boolean, reason: unknown): void {
    const waiting = this.#waiting.filter(isMeant)
    for (const job of waiting) this.#waiting.splice(this.#waiting.indexOf(job), 1)
    const busy = [...this.#desks].filter(({ job }) => job !== null && isMeant(job))
    const ended = [...waiting, ...busy.flatMap(({ job }) => job ?? [])]
    for (const desk of busy) this.#dismiss(desk)
    for (const job of ended) job.reject(reason)
    this.#startWaiting()
  }

  #startWaiting(): void {
    for (let desk = this.#freeDesk(); desk !== null; desk = this.#freeDesk()) {
      const job = this.#waiting.shift()
      if (job === undefined) return
      this.#stopIdling(desk)
      desk.job = job
      desk.worker.postMessage({ jobId: job.jobId, task: job.task } satisfies ToCover)
    }
  }

  /** A desk without a job, a new one if there is room; null when no job waits or all are busy. */
  #freeDesk(): Desk | null {
    if (this.#waiting.length === 0) return null
    for (const desk of this.#desks) if (desk.job === null) return desk
    return this.#desks.size < this.#mostWorkers ? this.#newDesk() : null
  }

  #newDesk(): Desk {
    const desk: Desk = { worker: this.#makeWorker(), job: null, idleTimer: null }
    desk.worker.addEventListener('message', (event) => {
      // Our own worker sends nothing else.
      if (event instanceof MessageEvent) this.#receive(desk, event.data as FromCover)
    })
    const crash = (): void => this.#crash(desk)
    desk.worker.addEventListener('error', crash)
    desk.worker.addEventListener('messageerror', crash)
    this.#desks.add(desk)
    return desk
  }

  #receive(desk: Desk, message: FromCover): void {
    const { job } = desk
    if (job === null || job.jobId !== message.jobId) return
    if (message.kind === 'incumbent') {
      job.onIncumbent(message.state, message.fraction)
      return
    }
    desk.job = null
    if (message.kind === 'done') job.resolve(message.state)
    else job.reject(new JobProblem(message.problem))
    this.#startWaiting()
    if (desk.job === null) desk.idleTimer = setTimeout(() => this.#dismiss(desk), this.#idleMs)
  }

  #crash(desk: Desk): void {
    if (!this.#desks.has(desk)) return
    const { job } = desk
    this.#dismiss(desk)
    job?.reject(new JobProblem({ code: 'cover-worker-crashed', values: {} }))
    this.#startWaiting()
  }

  #dismiss(desk: Desk): void {
    this.#stopIdling(desk)
    this.#desks.delete(desk)
    desk.worker.terminate()
    desk.job = null
  }

  #stopIdling(desk: Desk): void {
    if (desk.idleTimer !== null) clearTimeout(desk.idleTimer)
    desk.idleTimer = null
  }
}
