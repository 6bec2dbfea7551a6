import { type Catalogue, textsAtOnce } from '../../core/plan'
import { InvariantError } from '../../core/units'
import { type Entry, sentenceOf, type ValuesOf } from './wordsOf'

export type TextKey = keyof Catalogue

/** Keys of the sentences that need no values: labels, headings. */
export type PlainKey = { [K in TextKey]: Catalogue[K] extends string ? K : never }[TextKey]

const texts = new Map<string, Entry>(Object.entries(textsAtOnce))

/** Adds the words of a part that comes later. */
export function bringTexts(later: Partial<Catalogue>): void {
  for (const [key, entry] of Object.entries(later)) texts.set(key, entry)
}

/**
 * A part of the screen and its words, fetched together.
 * @param words modules of this folder; see core/plan/text
 */
export async function withTexts<P>(
  part: Promise<P>,
  ...words: readonly Promise<{ readonly texts: Partial<Catalogue> }>[]
): Promise<P> {
  for (const { texts: later } of await Promise.all(words)) bringTexts(later)
  return part
}

/**
 * A text of the catalogue.
 * @param key     its name
 * @param values  what it speaks of, ready as text (formatted in the units shown); none for plain texts
 * @throws InvariantError when the part of the screen that it belongs to came without its words
 */
export function t<K extends TextKey>(key: K, ...values: ValuesOf<Catalogue[K]>): string {
  const entry = texts.get(key)
  if (entry === undefined) throw new InvariantError('a text is not there yet', { key })
  return sentenceOf(entry, values)
}

/** Whether a key that was made from data names a plain text of the catalogue. */
export const isTextKey = (key: string): key is PlainKey => typeof texts.get(key) === 'string'
