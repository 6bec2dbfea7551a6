/** A sentence of a catalogue; a function where it speaks of something. */
export type Entry = string | ((values: never) => string)

export type ValuesOf<E> = E extends (values: infer V) => string ? [values: V] : []

/** The sentence of an entry. The caller's types have matched the values to it. */
export const sentenceOf = (entry: Entry, values: readonly unknown[]): string =>
  typeof entry === 'string' ? entry : entry(values[0] as never)

/** A `t` over a part of the catalogue that comes with the panel that uses it. */
export const wordsOf =
  <C extends Readonly<Record<string, Entry>>>(texts: C) =>
  <K extends keyof C & string>(key: K, ...values: ValuesOf<C[K]>): string =>
    sentenceOf(texts[key] as Entry, values)
