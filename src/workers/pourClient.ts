import type { PourResult, PourTask } from '../core/plan'
import { type JobOptions, WorkerLink, type WorkerLike } from './workerLink'

const IDLE_MS = 2 * 60_000

const makePourWorker = (): WorkerLike =>
  new Worker(new URL('./pour.worker.ts', import.meta.url), { type: 'module' })

/** The pour worker: works out layers, heat and hours. It remembers only the fits and widths of its last tasks. */
export class PourClient {
  readonly #link: WorkerLink<PourTask, PourResult>

  constructor(makeWorker: () => WorkerLike = makePourWorker, idleMs = IDLE_MS) {
    this.#link = new WorkerLink(makeWorker, () => undefined, idleMs, 'pour-worker-crashed')
  }

  /** The same answer as `answerPour`. Rejects with JobProblem when the worker failed or crashed. */
  answer(task: PourTask, options?: JobOptions): Promise<PourResult> {
    return this.#link.ask(task, options)
  }
}
