import { formTexts, priceTexts } from '../../../core/plan'

const texts = { ...formTexts, ...priceTexts } as const

type Texts = typeof texts
type BuildKey = keyof Texts
type ValuesOf<K extends BuildKey> = Texts[K] extends (values: infer V) => string ? [values: V] : []

/** A text of the stages Form and Price, which are loaded with them: as `t` for all others. */
export function bt<K extends BuildKey>(key: K, ...values: ValuesOf<K>): string {
  const entry: string | ((values: never) => string) = texts[key]
  // The signature above has matched the values to this very key; the union of all entries forgets that.
  return typeof entry === 'string' ? entry : entry(values[0] as never)
}
