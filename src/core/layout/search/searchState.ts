/** How far a search had come when it found something better or proved more. */
export interface TracePoint {
  readonly evaluations: number
  readonly value: number
  readonly bound: number
}

export interface SearchState<T> {
  /** The best found so far; null before anything was found. */
  readonly incumbent: T | null
  /** What the search maximises, of the incumbent; −Infinity without one. */
  readonly value: number
  /** Nothing can be better than this; Infinity before anything is proved. */
  readonly bound: number
  readonly isDone: boolean
  readonly evaluations: number
  /** Only what changed, oldest first. */
  readonly trace: readonly TracePoint[]
}

/**
 * A search that is done in steps, so that it can be stopped, shown on the way, repeated exactly, and tested by counts
 * instead of the clock.
 */
export interface Search<T> {
  /**
   * Goes on for about so many evaluations (a small number is overrun by the work between two looks).
   * @param evaluations > 0; Infinity: to the end
   */
  step(evaluations: number): SearchState<T>
}

/** The search's own books: the work that it is made of writes here. */
export class SearchLedger<T> {
  incumbent: T | null = null
  value = -Infinity
  bound = Infinity
  evaluations = 0
  readonly trace: TracePoint[] = []

  spend(evaluations = 1): void {
    this.evaluations += evaluations
  }

  /** Takes what is better than anything before. @returns whether it was */
  offer(value: number, make: () => T): boolean {
    if (!(value > this.value)) return false
    this.value = value
    this.incumbent = make()
    if (this.bound < value) this.bound = value
    this.#note()
    return true
  }

  /** Notes that nothing can be better than this, or than what was found. */
  limit(bound: number): void {
    const proved = Math.max(bound, this.value)
    if (!(proved < this.bound)) return
    const isNews = this.bound - proved > 1e-3 * Math.abs(proved)
    this.bound = proved
    if (isNews) this.#note()
  }

  #note(): void {
    this.trace.push({ evaluations: this.evaluations, value: this.value, bound: this.bound })
  }
}

/** The work of a search: it yields wherever it may be left for a while. */
export type SearchWork = Generator<undefined, void, undefined>

/**
 * A search from its work.
 * @param work starts the work on the given ledger
 */
export function searchOf<T>(work: (ledger: SearchLedger<T>) => SearchWork): Search<T> {
  const ledger = new SearchLedger<T>()
  const running = work(ledger)
  let isDone = false
  return {
    step: (evaluations) => {
      const until = ledger.evaluations + evaluations
      while (!isDone && ledger.evaluations < until) isDone = running.next().done === true
      const { incumbent, value, bound, trace } = ledger
      return { incumbent, value, bound, isDone, evaluations: ledger.evaluations, trace: [...trace] }
    },
  }
}
