import type { InputProblem } from '../core/units'
import { JobProblem, type WorkerLike } from './workerLink'

/** From the page to a search worker. There is no cancel: a search is ended with its worker. */
export interface ToSearch<Task> {
  readonly jobId: number
  readonly task: Task
}

/** From a search worker to the page: any number of `incumbent`, then one of the others. */
export type FromSearch<State> =
  | { readonly kind: 'incumbent'; readonly jobId: number; readonly state: State; readonly fraction: number }
  | { readonly kind: 'done'; readonly jobId: number; readonly state: State }
  | { readonly kind: 'failed'; readonly jobId: number; readonly problem: InputProblem }

export interface SearchOptions<State> {
  /** Ends the search at once; the promise rejects with the signal's reason. */
  readonly signal?: AbortSignal
  /** A newer search of the same lane takes the place of this one, which rejects with AbortError. */
  readonly lane?: string
  /** Hears of what is found and proved on the way, with a fraction done from 0 to 1. */
  readonly onIncumbent?: (state: State, fraction: number) => void
}

interface SearchJob<Task, State> {
  readonly jobId: number
  readonly task: Task
  readonly lane: string | null
  readonly resolve: (state: State) => void
  readonly reject: (reason: unknown) => void
  readonly onIncumbent: (state: State, fraction: number) => void
}

interface Desk<Task, State> {
  readonly worker: WorkerLike
  job: SearchJob<Task, State> | null
  idleTimer: ReturnType<typeof setTimeout> | null
}

const overtaken = (): DOMException => new DOMException('a newer search took its place', 'AbortError')

/**
 * Searches on a few workers, the rest waiting in order. A search that is cancelled or overtaken is ended with its worker;
 * workers keep nothing, so the next search just starts another.
 */
export class SearchDesks<Task, State> {
  readonly #name: 'cover' | 'fill'
  readonly #makeWorker: () => WorkerLike
  readonly #mostWorkers: number
  readonly #idleMs: number
  readonly #desks = new Set<Desk<Task, State>>()
  readonly #waiting: SearchJob<Task, State>[] = []
  #lastJobId = 0

  /**
   * @param name begins the codes of what became of a worker: NAME-worker-crashed, NAME-worker-ended
   */
  constructor(name: 'cover' | 'fill', makeWorker: () => WorkerLike, mostWorkers: number, idleMs: number) {
    this.#name = name
    this.#makeWorker = makeWorker
    this.#mostWorkers = mostWorkers
    this.#idleMs = idleMs
  }

  /**
   * @returns the search's last state
   * Rejects with JobProblem (the task's own problem, or that the worker crashed), AbortError when overtaken, or the
   * signal's reason.
   */
  search(task: Task, options: SearchOptions<State> = {}): Promise<State> {
    const { signal, lane = null, onIncumbent = () => undefined } = options
    if (signal?.aborted === true) return Promise.reject(signal.reason)
    const jobId = ++this.#lastJobId
    const answer = new Promise<State>((resolve, reject) => {
      if (lane !== null) this.#endWhere((job) => job.lane === lane, overtaken())
      this.#waiting.push({ jobId, task, lane, resolve, reject, onIncumbent })
    })
    const cancel = (): void => this.#endWhere((job) => job.jobId === jobId, signal?.reason)
    signal?.addEventListener('abort', cancel, { once: true })
    this.#startWaiting()
    return answer.finally(() => signal?.removeEventListener('abort', cancel))
  }

  /** Ends all workers for good, with what they had in hand. */
  end(): void {
    this.#endWhere(() => true, new JobProblem({ code: `${this.#name}-worker-ended`, values: {} }))
    for (const desk of this.#desks) this.#dismiss(desk)
  }

  #endWhere(isMeant: (job: SearchJob<Task, State>) => boolean, reason: unknown): void {
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
      desk.worker.postMessage({ jobId: job.jobId, task: job.task } satisfies ToSearch<Task>)
    }
  }

  /** A desk without a job, a new one if there is room; null when no job waits or all are busy. */
  #freeDesk(): Desk<Task, State> | null {
    if (this.#waiting.length === 0) return null
    for (const desk of this.#desks) if (desk.job === null) return desk
    return this.#desks.size < this.#mostWorkers ? this.#newDesk() : null
  }

  #newDesk(): Desk<Task, State> {
    const desk: Desk<Task, State> = { worker: this.#makeWorker(), job: null, idleTimer: null }
    desk.worker.addEventListener('message', (event) => {
      // Our own worker sends nothing else.
      if (event instanceof MessageEvent) this.#receive(desk, event.data as FromSearch<State>)
    })
    const crash = (): void => this.#crash(desk)
    desk.worker.addEventListener('error', crash)
    desk.worker.addEventListener('messageerror', crash)
    this.#desks.add(desk)
    return desk
  }

  #receive(desk: Desk<Task, State>, message: FromSearch<State>): void {
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

  #crash(desk: Desk<Task, State>): void {
    if (!this.#desks.has(desk)) return
    const { job } = desk
    this.#dismiss(desk)
    job?.reject(new JobProblem({ code: `${this.#name}-worker-crashed`, values: {} }))
    this.#startWaiting()
  }

  #dismiss(desk: Desk<Task, State>): void {
    this.#stopIdling(desk)
    this.#desks.delete(desk)
    desk.worker.terminate()
    desk.job = null
  }

  #stopIdling(desk: Desk<Task, State>): void {
    if (desk.idleTimer !== null) clearTimeout(desk.idleTimer)
    desk.idleTimer = null
  }
}
