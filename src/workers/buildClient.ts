import type { BuildResult, BuildTask } from '../core/plan'
import { type JobOptions, WorkerLink, type WorkerLike } from './workerLink'

const IDLE_MS = 2 * 60_000

const makeBuildWorker = (): WorkerLike =>
  new Worker(new URL('./build.worker.ts', import.meta.url), { type: 'module' })

/** The build worker: works out form, wood, weight, work and price. It keeps nothing. */
export class BuildClient {
  readonly #link: WorkerLink<BuildTask, BuildResult>

  constructor(makeWorker: () => WorkerLike = makeBuildWorker, idleMs = IDLE_MS) {
    this.#link = new WorkerLink(makeWorker, () => undefined, idleMs, 'build-worker-crashed')
  }

  /** The same answer as `answerBuild`. Rejects with JobProblem when the worker failed or crashed. */
  answer(task: BuildTask, options?: JobOptions): Promise<BuildResult> {
    return this.#link.ask(task, options)
  }
}
