export interface BandSteps {
  /** Neighbours are at most so many offsets apart. */
  readonly mostStep: number
  /** What a step sideways costs, times its square. */
  readonly stepCost: number
}

interface Band extends BandSteps {
  readonly costs: Float32Array
  readonly count: number
  readonly depth: number
}

/** The step to the cheapest offset of the place before. */
function bestStep(best: Float64Array, t: number, { depth, mostStep, stepCost }: Band): number {
  let least = Infinity
  let step = 0
  const to = Math.min(mostStep, depth - 1 - t)
  for (let k = Math.max(-mostStep, -t); k <= to; k++) {
    const value = (best[t + k] ?? Infinity) + stepCost * k * k
    if (value >= least) continue
    least = value
    step = k
  }
  return step
}

/**
 * The cheapest way over `turns` places from the first on, as offsets; `start` is the cost of each offset there.
 * Viterbi's recursion.
 */
function cheapestWay(band: Band, turns: number, start: Float64Array, end: number | null): Int32Array {
  const { costs, count, depth, stepCost } = band
  const from = new Int8Array(turns * depth)
  let best = start
  for (let n = 1; n < turns; n++) {
    const next = new Float64Array(depth)
    const row = (n % count) * depth
    for (let t = 0; t < depth; t++) {
      const k = bestStep(best, t, band)
      next[t] = (best[t + k] ?? Infinity) + stepCost * k * k + (costs[row + t] ?? Infinity)
      from[n * depth + t] = k
    }
    best = next
  }
  let at = end ?? best.indexOf(Math.min(...best))
  const way = new Int32Array(turns)
  for (let n = turns - 1; n >= 0; n--) {
    way[n] = at
    at += from[n * depth + at] ?? 0
  }
  return way
}

/**
 * The cheapest closed way round a band: one offset at each place. Two turns tell where it passes one place; from there
 * one turn leads back to it. Closed always, and the cheapest through that place.
 * @param costs `count` rows of `depth`
 * @returns the offset's index at each place
 */
export function cheapestRound(
  costs: Float32Array,
  count: number,
  depth: number,
  steps: BandSteps,
): Int32Array {
  const band: Band = { costs, count, depth, ...steps }
  const free = cheapestWay(band, 2 * count, Float64Array.from(costs.subarray(0, depth)), null)
  const through = free[count] ?? 0
  const start = new Float64Array(depth).fill(Infinity)
  start[through] = costs[through] ?? 0
  return cheapestWay(band, count + 1, start, through).subarray(0, count)
}
