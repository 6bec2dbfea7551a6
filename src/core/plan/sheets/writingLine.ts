import { type Block, paragraph, type Segment, STROKES } from '../../drawing'
import { SIZE } from './sheetStyle'

const WRITE_MM = 14
const AIR_MM = 5

/** A line to write on, its words small below it. */
export function writingLine(words: string, widthMm: number): Block {
  const label = paragraph(words, { sizeMm: SIZE.note, widthMm })
  return {
    heightMm: WRITE_MM + 1.5 + label.heightMm,
    spaceBeforeMm: 0,
    draw: ([x, y]) => {
      const line: Segment = [
        [x, y + WRITE_MM],
        [x + widthMm, y + WRITE_MM],
      ]
      return [
        { kind: 'segments', segments: [line], stroke: STROKES.thin },
        ...label.draw([x, y + WRITE_MM + 1.5]),
      ]
    },
  }
}

/** Two of them side by side. */
export function pairOfWritingLines(words: readonly [string, string], widthMm: number): Block {
  const halfMm = widthMm / 2 - AIR_MM
  const lines = words.map((line) => writingLine(line, halfMm))
  return {
    heightMm: Math.max(...lines.map(({ heightMm }) => heightMm)),
    spaceBeforeMm: 2,
    draw: ([x, y]) => lines.flatMap((line, k) => line.draw([x + k * (halfMm + 2 * AIR_MM), y])),
  }
}
