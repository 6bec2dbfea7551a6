import { type Block, centredText, type DrawItem, hatchRegion, STROKES, textWidthMm } from '../../drawing'
import type { CuttingPlan, FormPart, StockSheet } from '../../form'
import type { SheetInput } from './sheetInput'
import { SIZE } from './sheetStyle'

interface Rect {
  readonly xMm: number
  readonly yMm: number
  readonly widthMm: number
  readonly heightMm: number
}

export interface BoardToDraw {
  readonly use: CuttingPlan['sheets'][number]
  readonly sheet: StockSheet
  readonly parts: readonly FormPart[]
}

/** Air round a text in a part, mm of paper. */
const AIR_MM = 1.6
const HATCH = { spacingMm: 2.4, angleRad: Math.PI / 4 }

const ringOf = ({ xMm, yMm, widthMm, heightMm }: Rect) =>
  [
    [xMm, yMm],
    [xMm + widthMm, yMm],
    [xMm + widthMm, yMm + heightMm],
    [xMm, yMm + heightMm],
  ] as const

/** Numbers of narrow strips stand one step further each, so that those of neighbours do not meet. */
const STEP_MM = 7
const STEPS = 6

/** A strip too narrow for letters bears its number on a white ground. */
function numberOn(rect: Rect, number: number, isUpright: boolean): readonly DrawItem[] {
  const longMm = isUpright ? rect.heightMm : rect.widthMm
  const at = Math.min((0.5 + (number % STEPS)) * STEP_MM, longMm / 2)
  const centre = isUpright
    ? ([rect.xMm + rect.widthMm / 2, rect.yMm + at] as const)
    : ([rect.xMm + at, rect.yMm + rect.heightMm / 2] as const)
  return [centredText(String(number), centre, { sizeMm: SIZE.note, weight: 'bold', plate: true })]
}

/** The first of the texts that has room, along the longer side; the bare number where none has. */
function labelIn(rect: Rect, number: number, texts: readonly string[]): readonly DrawItem[] {
  const isUpright = rect.heightMm > rect.widthMm
  const [longMm, shortMm] = isUpright ? [rect.heightMm, rect.widthMm] : [rect.widthMm, rect.heightMm]
  const text = texts.find((words) => textWidthMm(words, SIZE.note) + 2 * AIR_MM <= longMm)
  if (shortMm < SIZE.note + AIR_MM || text === undefined) return numberOn(rect, number, isUpright)
  const centre = [rect.xMm + rect.widthMm / 2, rect.yMm + rect.heightMm / 2] as const
  return [centredText(text, centre, { sizeMm: SIZE.note, angleRad: isUpright ? -Math.PI / 2 : 0 })]
}

/** A sheet as it is sawn: parts with their numbers, what is left over hatched. Rules: SHT-17. */
export function boardBlock(board: BoardToDraw, input: SheetInput, widthMm: number, mostMm: number): Block {
  const { use, sheet, parts } = board
  const scale = Math.min(widthMm / sheet.lengthMm, mostMm / sheet.widthMm)
  const { length } = input
  return {
    heightMm: sheet.widthMm * scale,
    spaceBeforeMm: 2.5,
    draw: ([x, y]) => {
      const onPaper = (rect: Rect): Rect => ({
        xMm: x + rect.xMm * scale,
        yMm: y + rect.yMm * scale,
        widthMm: rect.widthMm * scale,
        heightMm: rect.heightMm * scale,
      })
      const whole = onPaper({ xMm: 0, yMm: 0, widthMm: sheet.lengthMm, heightMm: sheet.widthMm })
      const left = use.offcuts.flatMap((offcut): readonly DrawItem[] => {
        const segments = hatchRegion({ outer: ringOf(onPaper(offcut)), holes: [] }, HATCH)
        return [{ kind: 'segments', segments, stroke: STROKES.helper }]
      })
      const rings = use.parts.map((part): DrawItem => ({
        kind: 'polygon',
        rings: [ringOf(onPaper(part))],
        stroke: STROKES.finished,
        fill: 'white',
      }))
      const labels = use.parts.flatMap((part) => {
        const number = part.part + 1
        const name = parts[part.part]?.name ?? ''
        const size = `${length(part.widthMm)} × ${length(part.heightMm)}`
        return labelIn(onPaper(part), number, [`${number}  ${name}, ${size}`, `${number}  ${name}`])
      })
      return [
        ...left,
        { kind: 'polygon', rings: [ringOf(whole)], stroke: STROKES.outline, fill: null },
        ...rings,
        ...labels,
      ]
    },
  }
}
