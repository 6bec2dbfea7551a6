import type { Point } from '../geometry'
import { ARROW_MM, arrowHead } from './arrowHead'
import type { DrawItem, TextItem } from './sheet'
import { STROKES } from './strokes'
import { textItem } from './textItems'
import { textWidthMm } from './textMetrics'

export interface LinearDimension {
  /** Ends of what is measured, on the sheet. */
  readonly from: Point
  readonly to: Point
  /** From the measured line to the dimension line: positive to the right as one looks from `from` to `to`. */
  readonly offsetMm: number
  readonly text: string
  readonly sizeMm: number
}

/** ISO 129-1: extension lines leave a small gap at the object and run a little past the dimension line. */
const EXTENSION_GAP_MM = 1
const EXTENSION_PAST_MM = 1.6
const TEXT_GAP_MM = 1
/** Least room inside, beyond text or arrows. */
const AIR_MM = 1.5

/** Direction of reading: upright, or turned so that it is read from the right, never upside down. Rules: DRW-9. */
export function uprightAngle(angleRad: number): number {
  const turn = Math.atan2(Math.sin(angleRad), Math.cos(angleRad))
  const nearlyQuarter = Math.PI / 2 - 1e-9
  if (turn >= nearlyQuarter) return turn - Math.PI
  return turn < -Math.PI / 2 - 1e-9 ? turn + Math.PI : turn
}

interface Frame {
  readonly lengthMm: number
  readonly along: Point
  readonly side: Point
  readonly at: (alongMm: number, sideMm: number) => Point
}

function frameOf({ from, to, offsetMm }: LinearDimension): Frame {
  const lengthMm = Math.hypot(to[0] - from[0], to[1] - from[1])
  const along: Point = lengthMm === 0 ? [1, 0] : [(to[0] - from[0]) / lengthMm, (to[1] - from[1]) / lengthMm]
  const sign = offsetMm < 0 ? -1 : 1
  const side: Point = [-along[1] * sign, along[0] * sign]
  return {
    lengthMm,
    along,
    side,
    at: (a, s) => [from[0] + along[0] * a + side[0] * s, from[1] + along[1] * a + side[1] * s],
  }
}

/** The text over the dimension line as it is read, so that the line does not touch it. */
function dimensionText(dimension: LinearDimension, frame: Frame, middleMm: number): TextItem {
  const { offsetMm, text, sizeMm } = dimension
  const angleRad = uprightAngle(Math.atan2(frame.along[1], frame.along[0]))
  const [x, y] = frame.at(middleMm, Math.abs(offsetMm))
  const [upX, upY] = [Math.sin(angleRad), -Math.cos(angleRad)]
  return textItem(text, [x + upX * TEXT_GAP_MM, y + upY * TEXT_GAP_MM], {
    sizeMm,
    anchor: 'middle',
    angleRad,
    plate: false,
  })
}

/**
 * A length with extension lines, dimension line, arrows and its text: inside when there is room, else with the
 * arrows from outside and the text beyond the second end (ISO 129-1 shows both).
 * Rules: DRW-9.
 */
export function linearDimension(dimension: LinearDimension): readonly DrawItem[] {
  const frame = frameOf(dimension)
  const { lengthMm, along, at } = frame
  const away = Math.abs(dimension.offsetMm)
  const textMm = textWidthMm(dimension.text, dimension.sizeMm)
  const arrowsInside = lengthMm >= 2 * ARROW_MM + AIR_MM
  const textInside = arrowsInside && lengthMm >= textMm + 2 * AIR_MM
  const tail = 2 * ARROW_MM
  const textMiddle = textInside ? lengthMm / 2 : lengthMm + tail + AIR_MM + textMm / 2
  const lineFrom = arrowsInside ? 0 : -tail
  const lineTo = textInside ? lengthMm : textMiddle + textMm / 2
  const back: Point = [-along[0], -along[1]]
  const extension = (a: number) => [at(a, EXTENSION_GAP_MM), at(a, away + EXTENSION_PAST_MM)] as const
  return [
    {
      kind: 'segments',
      segments: [extension(0), extension(lengthMm), [at(lineFrom, away), at(lineTo, away)]],
      stroke: STROKES.thin,
    },
    arrowHead(at(0, away), arrowsInside ? back : along),
    arrowHead(at(lengthMm, away), arrowsInside ? along : back),
    dimensionText(dimension, frame, textMiddle),
  ]
}
