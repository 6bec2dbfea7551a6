/** So many versions of each plan are kept. */
export const MOST_VERSIONS = 20

/** How much a version is missed: the gap that it leaves, measured by how long ago that was. */
const lossOf = (ages: readonly number[], at: number): number => {
  const [younger, age, older] = [ages[at - 1] ?? 0, ages[at] ?? 0, ages[at + 1] ?? 0]
  return (older - younger) / Math.max(age, 1)
}

/**
 * Which versions go when there are too many: close together stay those of the last minutes, far apart those of days ago.
 * The newest and the oldest never go.
 * @param timesMs when each version was saved, ascending
 * @param nowMs   not before the last of them
 * @returns the times of those to drop
 */
export function versionsToDrop(
  timesMs: readonly number[],
  nowMs: number,
  most = MOST_VERSIONS,
): readonly number[] {
  const kept = timesMs.toReversed()
  const dropped: number[] = []
  while (kept.length > Math.max(most, 2)) {
    const ages = kept.map((timeMs) => nowMs - timeMs)
    let least = 1
    for (let at = 2; at < kept.length - 1; at++) {
      if (lossOf(ages, at) < lossOf(ages, least)) least = at
    }
    dropped.push(...kept.splice(least, 1))
  }
  return dropped
}
