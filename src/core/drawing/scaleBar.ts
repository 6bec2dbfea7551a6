import type { Point } from '../geometry'
import type { DrawItem } from './sheet'
import { STROKES } from './strokes'
import { textItem } from './textItems'

export interface ScaleBar {
  /** Left end of the bar's upper edge. */
  readonly at: Point
  readonly system: 'mm' | 'inch'
  /** What stands above the ends of the bar: `0`, and the bar's length on paper. */
  readonly endTexts: readonly [string, string]
  readonly sizeMm: number
}

/** Ten fields of 10 mm, or four of an inch: the true length on paper. */
const BAR = { mm: { fields: 10, fieldMm: 10 }, inch: { fields: 4, fieldMm: 25.4 } }
const HEIGHT_MM = 2

/** Length of the bar on paper, mm: 100, or 101.6 (4 in). */
export const scaleBarLengthMm = (system: 'mm' | 'inch'): number => BAR[system].fields * BAR[system].fieldMm

/**
 * A bar of known length on paper, in black and white fields, to hold a rule against.
 * Rules: DRW-10.
 */
export function scaleBar({ at, system, endTexts, sizeMm }: ScaleBar): readonly DrawItem[] {
  const [x, y] = at
  const { fields, fieldMm } = BAR[system]
  const field = (k: number): readonly Point[] => {
    const [left, right] = [x + k * fieldMm, x + (k + 1) * fieldMm]
    return [
      [left, y],
      [right, y],
      [right, y + HEIGHT_MM],
      [left, y + HEIGHT_MM],
    ]
  }
  const length = scaleBarLengthMm(system)
  const outline: readonly Point[] = [
    [x, y],
    [x + length, y],
    [x + length, y + HEIGHT_MM],
    [x, y + HEIGHT_MM],
  ]
  const black = Array.from({ length: fields }, (_, k) => k).filter((k) => k % 2 === 0)
  return [
    { kind: 'polygon', rings: black.map(field), stroke: null, fill: 'black' },
    { kind: 'polygon', rings: [outline], stroke: STROKES.thin, fill: null },
    textItem(endTexts[0], [x, y - 1.2], { sizeMm }),
    textItem(endTexts[1], [x + length, y - 1.2], { sizeMm, anchor: 'end' }),
  ]
}
