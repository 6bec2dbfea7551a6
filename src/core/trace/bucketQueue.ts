/**
 * A queue of numbered things by whole-number priority, for searches whose priorities never go back by more than
 * `span` (Dial's algorithm). Things may be put in more than once; the caller drops the stale ones.
 */
export class BucketQueue {
  readonly #buckets: number[][]
  #now = 0
  #size = 0

  constructor(span: number) {
    this.#buckets = Array.from({ length: span + 1 }, () => [])
  }

  /** Priority of what `take` would give next. */
  get priority(): number {
    return this.#now
  }

  put(thing: number, priority: number): void {
    this.#buckets[priority % this.#buckets.length]?.push(thing)
    this.#size++
  }

  /** @returns the thing of least priority, or −1 when there is none */
  take(): number {
    if (this.#size === 0) return -1
    for (;;) {
      const thing = this.#buckets[this.#now % this.#buckets.length]?.pop()
      if (thing !== undefined) {
        this.#size--
        return thing
      }
      this.#now++
    }
  }
}
