import { t } from './t'
import type { Format } from './useFormat'

/** `412 mm left`: off the datum, as seen by one who looks along it; the words of the printed sheet. */
export function offsetText(offsetMm: number, { length }: Pick<Format, 'length'>): string {
  const offset = length(Math.abs(offsetMm))
  if (offset === length(0)) return t('offset-none')
  return t(offsetMm < 0 ? 'offset-left' : 'offset-right', { offset })
}
