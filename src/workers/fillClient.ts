import type { FillFinding, SearchState } from '../core/layout'
import type { FillOrder } from './fillJob'
import { SearchDesks, type SearchOptions } from './searchDesks'
import type { WorkerLike } from './workerLink'

const IDLE_MS = 60_000

const makeFillWorker = (): WorkerLike =>
  new Worker(new URL('./fill.worker.ts', import.meta.url), { type: 'module' })

/** Searches for how offcuts fill the gaps, one at a time: the newest takes the place of the one before. */
export class FillClient {
  readonly #desks: SearchDesks<FillOrder, SearchState<FillFinding>>

  constructor(makeWorker: () => WorkerLike = makeFillWorker, idleMs = IDLE_MS) {
    this.#desks = new SearchDesks('fill', makeWorker, 1, idleMs)
  }

  /**
   * @param order the task, and for how long it may go on getting better
   * @returns the best proposals found when the time is up; incumbents are told as they come
   * Rejects with JobProblem ('fill-no-offcuts', 'fill-no-gap', 'fill-worker-crashed'), AbortError when overtaken, or the
   * signal's reason: what was told before then still holds.
   */
  search(
    order: FillOrder,
    options: Omit<SearchOptions<SearchState<FillFinding>>, 'lane'> = {},
  ): Promise<SearchState<FillFinding>> {
    return this.#desks.search(order, { ...options, lane: 'fill' })
  }

  /** Ends the worker for good, with what it had in hand. */
  end(): void {
    this.#desks.end()
  }
}
