/** Repeatable random numbers for tests: the same seed always gives the same row. */
export interface SeededRandom {
  /** From 0 up to, not including, 1. */
  next(): number
  /** From low up to high. */
  between(low: number, high: number): number
  /** A whole number from low to high, both included. */
  integer(low: number, high: number): number
}

/** Method: mulberry32, a public-domain generator of 32 bits of state. Good enough to vary shapes, for nothing secret. */
export function seededRandom(seed: number): SeededRandom {
  let state = seed | 0
  const next = (): number => {
    state = (state + 0x6d2b79f5) | 0
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32
  }
  const between = (low: number, high: number): number => low + (high - low) * next()
  const integer = (low: number, high: number): number => Math.floor(between(low, high + 1))
  return { next, between, integer }
}
