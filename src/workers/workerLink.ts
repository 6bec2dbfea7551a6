import { InvariantError, type InputProblem } from '../core/units'
import type { FromWorker, ToWorker } from './protocol'

/** The part of a browser's Worker that is used here. */
export interface WorkerLike {
  postMessage(message: unknown): void
  terminate(): void
  addEventListener(type: 'message' | 'error' | 'messageerror', listener: (event: Event) => void): void
}

/** A job ended without an answer; the problem says why. */
export class JobProblem extends Error {
  override readonly name = 'JobProblem'
  constructor(readonly problem: InputProblem) {
    super(problem.code)
  }
}

export interface JobOptions {
  readonly signal?: AbortSignal
  readonly onProgress?: (fraction: number) => void
}

interface PendingJob<Answer> {
  readonly resolve: (answer: Answer) => void
  readonly reject: (reason: unknown) => void
  readonly onProgress: ((fraction: number) => void) | undefined
}

const overtaken = (): DOMException => new DOMException('a newer job took its place', 'AbortError')

/**
 * One worker behind promises. A worker that crashed or was left idle is started again by the next job; the jobs that it
 * had in hand when it crashed are rejected with its code for that.
 */
export class WorkerLink<Task, Answer> {
  readonly #makeWorker: () => WorkerLike
  readonly #onGone: () => void
  readonly #idleMs: number
  readonly #crashCode: string
  readonly #pending = new Map<number, PendingJob<Answer>>()
  #worker: WorkerLike | null = null
  #idleTimer: ReturnType<typeof setTimeout> | null = null
  #lastJobId = 0

  /**
   * @param onGone called whenever the worker has ended: the next one remembers nothing
   * @param idleMs after so long without a job the worker is ended, to give back its memory
   * @param crashCode what the jobs that it had in hand are told when it crashed
   */
  constructor(
    makeWorker: () => WorkerLike,
    onGone: () => void,
    idleMs: number,
    crashCode = 'photo-worker-crashed',
  ) {
    this.#makeWorker = makeWorker
    this.#onGone = onGone
    this.#idleMs = idleMs
    this.#crashCode = crashCode
  }

  /** @returns the answer; rejects with JobProblem, with the signal's reason, or with AbortError when overtaken */
  ask(task: Task, { signal, onProgress }: JobOptions = {}): Promise<Answer> {
    if (signal?.aborted === true) return Promise.reject(signal.reason)
    const jobId = ++this.#lastJobId
    const answer = new Promise<Answer>((resolve, reject) => {
      this.#pending.set(jobId, { resolve, reject, onProgress })
    })
    const cancel = (): void => this.#cancel(jobId, signal?.reason)
    signal?.addEventListener('abort', cancel, { once: true })
    this.#post({ kind: 'job', jobId, task })
    return answer.finally(() => signal?.removeEventListener('abort', cancel))
  }

  /** Ends the worker; what it had in hand is rejected. */
  end(problem: InputProblem): void {
    this.#stopIdling()
    this.#dismiss()
    const lost = [...this.#pending.values()]
    this.#pending.clear()
    for (const job of lost) job.reject(new JobProblem(problem))
  }

  #post(message: ToWorker<Task>): void {
    this.#stopIdling()
    this.#started().postMessage(message)
  }

  #started(): WorkerLike {
    if (this.#worker !== null) return this.#worker
    const worker = this.#makeWorker()
    worker.addEventListener('message', (event) => {
      // Our own worker sends nothing else.
      if (event instanceof MessageEvent) this.#receive(event.data as FromWorker<Answer>)
    })
    // An ended worker may still have an event on its way; it no longer speaks for the new one.
    const crash = (): void => {
      if (this.#worker === worker) this.end({ code: this.#crashCode, values: {} })
    }
    worker.addEventListener('error', crash)
    worker.addEventListener('messageerror', crash)
    this.#worker = worker
    return worker
  }

  #cancel(jobId: number, reason: unknown): void {
    const job = this.#pending.get(jobId)
    if (job === undefined) return
    this.#pending.delete(jobId)
    this.#worker?.postMessage({ kind: 'cancel', jobId } satisfies ToWorker<Task>)
    job.reject(reason)
    this.#idleIfDone()
  }

  #receive(message: FromWorker<Answer>): void {
    const job = this.#pending.get(message.jobId)
    // A stale answer: its job was cancelled while the answer was on its way.
    if (job === undefined) return
    if (message.kind === 'progress') {
      job.onProgress?.(message.fraction)
      return
    }
    this.#pending.delete(message.jobId)
    if (message.kind === 'done') job.resolve(message.answer)
    else job.reject(message.kind === 'failed' ? new JobProblem(message.problem) : overtaken())
    this.#idleIfDone()
  }

  /** A busy worker is never ended for being slow. */
  #idleIfDone(): void {
    if (this.#pending.size > 0) return
    this.#stopIdling()
    this.#idleTimer = setTimeout(() => {
      if (this.#pending.size > 0)
        throw new InvariantError('an idle worker has jobs', { jobs: this.#pending.size })
      this.#dismiss()
    }, this.#idleMs)
  }

  #dismiss(): void {
    this.#worker?.terminate()
    this.#worker = null
    this.#onGone()
  }

  #stopIdling(): void {
    if (this.#idleTimer !== null) clearTimeout(this.#idleTimer)
    this.#idleTimer = null
  }
}
