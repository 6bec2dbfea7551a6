import { InvariantError } from '../units'

/** The item at an index that the caller knows to be in range. @throws InvariantError otherwise */
export function itemAt<T>(list: readonly T[], index: number): T {
  const item = list[index]
  if (item === undefined) throw new InvariantError('index out of range', { index, length: list.length })
  return item
}

/** The item at an index taken round a closed list (−1 is the last one). @throws InvariantError on an empty list */
export function itemRound<T>(list: readonly T[], index: number): T {
  const n = list.length
  return itemAt(list, ((index % n) + n) % n)
}
