import type { StationPoint } from '../../cuts'
import type { SheetInput } from './sheetInput'

/** `412 mm left`: off the datum, as seen by one who looks along it. */
export function offsetText(
  { offsetMm }: Pick<StationPoint, 'offsetMm'>,
  { length, text }: Pick<SheetInput, 'length' | 'text'>,
): string {
  const offset = length(Math.abs(offsetMm))
  if (offset === length(0)) return text.sheetOffsetNone
  return offsetMm < 0 ? text.sheetOffsetLeft({ offset }) : text.sheetOffsetRight({ offset })
}

/** Names of the two ends of a cut: its number with a and b. */
export const endName = (cutNumber: number, end: 'from' | 'to'): string =>
  `${cutNumber}${end === 'from' ? 'a' : 'b'}`
