import { type Catalogue, en } from '../../core/plan'

export type TextKey = keyof Catalogue

type ValuesOf<K extends TextKey> = Catalogue[K] extends (values: infer V) => string ? [values: V] : []

/** Keys of the sentences that need no values: labels, headings. */
export type PlainKey = { [K in TextKey]: Catalogue[K] extends string ? K : never }[TextKey]

/**
 * A text of the catalogue.
 * @param key     its name
 * @param values  what it speaks of, ready as text (formatted in the units shown); none for plain texts
 */
export function t<K extends TextKey>(key: K, ...values: ValuesOf<K>): string {
  const entry: string | ((values: never) => string) = en[key]
  // The signature above has already matched the values to this very key; the union of all entries forgets that.
  return typeof entry === 'string' ? entry : entry(values[0] as never)
}

/** Whether a key that was made from data names a plain text of the catalogue. */
export const isTextKey = (key: string): key is PlainKey =>
  typeof Object.entries(en).find(([name]) => name === key)?.[1] === 'string'
