/** Repeatable random numbers for a search: the same seed gives the same row, so that a search can be done again exactly. */
export class RepeatableRandom {
  #state: number

  constructor(seed: number) {
    this.#state = seed | 0
  }

  /** From 0 up to, not including, 1. Method: mulberry32, a public-domain generator of 32 bits of state. */
  next(): number {
    this.#state = (this.#state + 0x6d2b79f5) | 0
    let mixed = Math.imul(this.#state ^ (this.#state >>> 15), 1 | this.#state)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32
  }

  between(low: number, high: number): number {
    return low + (high - low) * this.next()
  }

  /** Bell-shaped about 0 with a deviation of about 1: the sum of three even numbers is near enough for a climb. */
  bell(): number {
    return (this.next() + this.next() + this.next() - 1.5) * 2
  }

  /** One of a list; undefined of none. */
  pick<T>(list: readonly T[]): T | undefined {
    return list[Math.floor(this.next() * list.length)]
  }
}
