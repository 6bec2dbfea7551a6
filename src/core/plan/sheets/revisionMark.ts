import type { Plan } from '../schema'

/** No letters that are read for one another on a smudged sheet. */
const SIGNS = '23456789ABCDEFGHJKLMNPQRSTUVWXYZ'
const MARK_LENGTH = 4

/** The same data gives the same text, whatever order its keys were written in. */
const sortedText = (value: unknown): string =>
  JSON.stringify(value, (_, part: unknown) =>
    part !== null && typeof part === 'object' && !Array.isArray(part)
      ? Object.fromEntries(Object.entries(part).toSorted(([a], [b]) => (a < b ? -1 : 1)))
      : part,
  )

/**
 * Four signs that tell whether two prints were made from the same plan: any change gives another mark, but for one in a
 * million.
 * Method: FNV-1a, 32 bit (Fowler, Noll, Vo), of the plan as text; its upper 20 bits as 4 signs of 5 bits.
 * Rules: SHT-1.
 */
export function revisionMark(plan: Plan): string {
  let hash = 0x811c9dc5
  for (const sign of sortedText(plan)) {
    hash = Math.imul(hash ^ (sign.codePointAt(0) ?? 0), 0x01000193)
  }
  return Array.from({ length: MARK_LENGTH }, (_, k) => SIGNS[(hash >>> (27 - 5 * k)) & 31] ?? '').join('')
}
