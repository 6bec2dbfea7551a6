import type { InputProblem } from '../core/units'
import type { FromWorker, ToWorker } from './protocol'

/** A slice of work ends with the first bit that is done after this long: at most 30 ms, so that messages are read in time. */
export const SLICE_MS = 20

/** Thrown inside a job that was cancelled or overtaken; the queue catches it. */
export class JobCancelled extends Error {
  override readonly name = 'JobCancelled'
}

/** Thrown inside a job that cannot do what it was asked; its problem goes to the page. */
export class JobFailed extends Error {
  override readonly name = 'JobFailed'
  constructor(readonly problem: InputProblem) {
    super(problem.code)
  }
}

/** A job calls this between small bits of work; it waits for a moment when the slice is used up. */
export type Breathe = (fractionDone: number) => Promise<void>

export interface JobQueueParts<Task, Answer> {
  readonly perform: (task: Task, breathe: Breathe) => Promise<Answer>
  readonly reply: (message: FromWorker<Answer>) => void
  /** Jobs of the same lane overtake each other: the newest wins. Null: never overtaken. */
  readonly laneOf: (task: Task) => string | null
  readonly nowMs: () => number
  /** Resolves once waiting messages have been read. */
  readonly pause: () => Promise<void>
  /** What an error that is nobody's JobFailed means to the maker. */
  readonly problemOf: (error: unknown) => InputProblem
}

interface RunningJob {
  readonly lane: string | null
  cancelled: boolean
}

/**
 * Runs jobs beside each other in slices: a quick one is answered while a long one is under way.
 * Knows nothing of workers, so that it can be tested without one.
 */
export class JobQueue<Task, Answer> {
  readonly #parts: JobQueueParts<Task, Answer>
  readonly #running = new Map<number, RunningJob>()

  constructor(parts: JobQueueParts<Task, Answer>) {
    this.#parts = parts
  }

  /** Resolves when the job that the message began has been answered; at once for `cancel`. */
  async receive(message: ToWorker<Task>): Promise<void> {
    if (message.kind === 'cancel') {
      const job = this.#running.get(message.jobId)
      if (job !== undefined) job.cancelled = true
      return
    }
    const job = { lane: this.#parts.laneOf(message.task), cancelled: false }
    this.#overtake(job.lane)
    this.#running.set(message.jobId, job)
    this.#parts.reply(await this.#run(message.jobId, message.task, job))
    this.#running.delete(message.jobId)
  }

  #overtake(lane: string | null): void {
    if (lane === null) return
    for (const job of this.#running.values()) if (job.lane === lane) job.cancelled = true
  }

  async #run(jobId: number, task: Task, job: RunningJob): Promise<FromWorker<Answer>> {
    try {
      const answer = await this.#parts.perform(task, this.#breatheFor(jobId, job))
      return job.cancelled ? { kind: 'cancelled', jobId } : { kind: 'done', jobId, answer }
    } catch (error) {
      if (error instanceof JobCancelled) return { kind: 'cancelled', jobId }
      const problem = error instanceof JobFailed ? error.problem : this.#parts.problemOf(error)
      return { kind: 'failed', jobId, problem }
    }
  }

  #breatheFor(jobId: number, job: RunningJob): Breathe {
    let sliceStartMs = this.#parts.nowMs()
    return async (fraction) => {
      if (job.cancelled) throw new JobCancelled()
      if (this.#parts.nowMs() - sliceStartMs < SLICE_MS) return
      this.#parts.reply({ kind: 'progress', jobId, fraction })
      await this.#parts.pause()
      sliceStartMs = this.#parts.nowMs()
      if (job.cancelled) throw new JobCancelled()
    }
  }
}
