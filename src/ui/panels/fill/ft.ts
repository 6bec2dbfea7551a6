import { fillTexts } from '../../../core/plan'

type Texts = typeof fillTexts
type ValuesOf<K extends keyof Texts> = Texts[K] extends (values: infer V) => string ? [values: V] : []

/** A text about offcuts for the gaps, which is loaded with them: as `t` for all others. */
export function ft<K extends keyof Texts>(key: K, ...values: ValuesOf<K>): string {
  const entry: string | ((values: never) => string) = fillTexts[key]
  // The signature above has matched the values to this very key; the union of all entries forgets that.
  return typeof entry === 'string' ? entry : entry(values[0] as never)
}
