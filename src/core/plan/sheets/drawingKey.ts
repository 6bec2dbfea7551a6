import type { Point } from '../../geometry'
import {
  type Block,
  CAP_HEIGHT,
  type DrawItem,
  STROKES,
  type Stroke,
  arrowHead,
  hatchRegion,
  textItem,
  textWidthMm,
} from '../../drawing'
import { SIZE } from './sheetStyle'
import { markSymbol } from './markSymbol'
import { HATCH } from './slabLines'

/** One line of the key: a sample of what is drawn, and what it stands for. */
export interface KeyEntry {
  readonly sample: (middleLeft: Point) => readonly DrawItem[]
  readonly text: string
}

const SAMPLE_MM = 12
const SAMPLE_AIR_MM = 2.5
const ENTRY_AIR_MM = 6
const ROW_MM = 5.6

/** A sample of a line. */
export const lineSample =
  (stroke: Stroke) =>
  ([x, y]: Point): readonly DrawItem[] => [
    {
      kind: 'polyline',
      points: [
        [x, y],
        [x + SAMPLE_MM, y],
      ],
      stroke,
    },
  ]

/** A sample of a line with its arrow. */
export const arrowSample =
  (stroke: Stroke) =>
  ([x, y]: Point): readonly DrawItem[] => [
    ...lineSample(stroke)([x, y]),
    arrowHead([x + SAMPLE_MM, y], [1, 0], 3),
  ]

/** A sample of a mark. */
export const markSample = ([x, y]: Point): readonly DrawItem[] => markSymbol([x + SAMPLE_MM / 2, y])

const sampleField = ([x, y]: Point): readonly Point[] => [
  [x, y - 1.7],
  [x + SAMPLE_MM, y - 1.7],
  [x + SAMPLE_MM, y + 1.7],
  [x, y + 1.7],
]

/** A sample of a hatched field. */
export function hatchSample(middleLeft: Point): readonly DrawItem[] {
  const outer = sampleField(middleLeft)
  return [
    { kind: 'segments', segments: hatchRegion({ outer, holes: [] }, HATCH), stroke: STROKES.hatch },
    { kind: 'polygon', rings: [outer], stroke: STROKES.opening, fill: null },
  ]
}

/** A sample of a shaded field. */
export const shadeSample = (middleLeft: Point): readonly DrawItem[] => [
  { kind: 'polygon', rings: [sampleField(middleLeft)], stroke: STROKES.opening, fill: 'shade' },
]

/** The key of a drawing as rows of samples, as many beside one another as fit. */
export function drawingKey(entries: readonly KeyEntry[], widthMm: number): Block {
  const widest = Math.max(...entries.map(({ text }) => textWidthMm(text, SIZE.note)))
  const entryMm = SAMPLE_MM + SAMPLE_AIR_MM + widest + ENTRY_AIR_MM
  const columns = Math.max(1, Math.floor((widthMm + ENTRY_AIR_MM) / entryMm))
  const rows = Math.ceil(entries.length / columns)
  return {
    heightMm: rows * ROW_MM,
    spaceBeforeMm: 2,
    draw: ([x, y]) =>
      entries.flatMap(({ sample, text }, k): readonly DrawItem[] => {
        const left = x + Math.floor(k / rows) * entryMm
        const middle = y + (k % rows) * ROW_MM + ROW_MM / 2
        const baseline = middle + (CAP_HEIGHT * SIZE.note) / 2
        return [
          ...sample([left, middle]),
          textItem(text, [left + SAMPLE_MM + SAMPLE_AIR_MM, baseline], { sizeMm: SIZE.note }),
        ]
      }),
  }
}
