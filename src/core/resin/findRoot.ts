import { InvariantError } from '../units'

export interface RootSearch {
  readonly guess: number
  /** First step away from the guess in search of a change of sign. */
  readonly step: number
  readonly least: number
  readonly greatest: number
  /** Width of the last bracket. */
  readonly tolerance: number
}

type Sample = readonly [x: number, y: number]

const MOST_EVALUATIONS = 60

/**
 * Where a rising function crosses zero.
 * @param f  rising; may be as steep as a cliff
 * @returns the root; null where the function does not change sign between the ends of the search
 * @throws InvariantError when a value of the function is not a number
 * Method: the bracket grows from the guess; then regula falsi with the Illinois weight, and a halving whenever that
 * has not halved the bracket in three steps.
 */
export function findRoot(f: (x: number) => number, search: RootSearch): number | null {
  const at = (x: number): Sample => {
    const y = f(x)
    if (Number.isNaN(y)) throw new InvariantError('root search met a value that is no number', { x })
    return [x, y]
  }
  const bracket = bracketFrom(at, search)
  return bracket === null ? null : narrow(at, bracket, search.tolerance)
}

function bracketFrom(at: (x: number) => Sample, search: RootSearch): readonly [Sample, Sample] | null {
  let here = at(Math.min(search.greatest, Math.max(search.least, search.guess)))
  const upward = here[1] < 0
  let step = search.step
  for (let count = 0; count < MOST_EVALUATIONS; count += 1) {
    if (here[1] === 0) return [here, here]
    const end = upward ? search.greatest : search.least
    if (here[0] === end) return null
    const next = at(upward ? Math.min(end, here[0] + step) : Math.max(end, here[0] - step))
    if (upward ? next[1] >= 0 : next[1] <= 0) return upward ? [here, next] : [next, here]
    here = next
    step *= 2
  }
  return null
}

function narrow(at: (x: number) => Sample, bracket: readonly [Sample, Sample], tolerance: number): number {
  let [low, high] = bracket
  let lowWeight = 1
  let highWeight = 1
  for (let count = 0; count < MOST_EVALUATIONS && high[0] - low[0] > tolerance; count += 1) {
    const width = high[0] - low[0]
    const down = low[1] * lowWeight
    const up = high[1] * highWeight
    const secant = low[0] + (width * down) / (down - up)
    // Half a tolerance away from the ends, so that the last step closes the bracket from its far side.
    const inside = Math.min(high[0] - tolerance / 2, Math.max(low[0] + tolerance / 2, secant))
    const next = at(count % 4 === 3 || !Number.isFinite(secant) ? low[0] + width / 2 : inside)
    if (next[1] < 0) {
      low = next
      lowWeight = 1
      highWeight = highWeight / 2
    } else {
      high = next
      highWeight = 1
      lowWeight = lowWeight / 2
    }
  }
  const [x0, y0] = low
  const [x1, y1] = high
  return y1 === y0 ? x1 : x0 + ((x1 - x0) * -y0) / (y1 - y0)
}
