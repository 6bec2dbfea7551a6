/**
 * Slices of work whose number nobody knows, as a share that creeps from one number towards another and never gets there.
 * @param usual after so many slices half of the way is told
 */
export function* countedSlices<T>(
  work: Generator<unknown, T>,
  from: number,
  to: number,
  usual: number,
): Generator<number, T> {
  for (let slices = 1; ; slices++) {
    const turn = work.next()
    if (turn.done === true) return turn.value
    yield from + ((to - from) * slices) / (slices + usual)
  }
}
