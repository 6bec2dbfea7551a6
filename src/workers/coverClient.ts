import type { CoverFinding, CoverFindings, CoverKind, CoverTask, SearchState } from '../core/layout'
import { SearchDesks, type SearchOptions } from './searchDesks'
import type { WorkerLike } from './workerLink'

/** Two leave the page and the photo worker a core on most phones. */
const MOST_WORKERS = 2
const IDLE_MS = 60_000

export type CoverOptions<K extends CoverKind> = SearchOptions<SearchState<CoverFindings[K]>>

const makeCoverWorker = (): WorkerLike =>
  new Worker(new URL('./cover.worker.ts', import.meta.url), { type: 'module' })

/** Searches for the best place and the largest table, on a few workers. */
export class CoverClient {
  readonly #desks: SearchDesks<CoverTask, SearchState<CoverFinding>>

  constructor(makeWorker: () => WorkerLike = makeCoverWorker, mostWorkers = MOST_WORKERS, idleMs = IDLE_MS) {
    this.#desks = new SearchDesks('cover', makeWorker, mostWorkers, idleMs)
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
    const { onIncumbent, ...rest } = options
    // The worker answers with what the task's kind finds.
    const own = (state: SearchState<CoverFinding>) => state as SearchState<CoverFindings[K]>
    return this.#desks
      .search(task, { ...rest, onIncumbent: (state, fraction) => onIncumbent?.(own(state), fraction) })
      .then(own)
  }

  /** Ends all workers for good, with what they had in hand. */
  end(): void {
    this.#desks.end()
  }
}
