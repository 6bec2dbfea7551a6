import {
  interiorPoint,
  type Point,
  type Region,
  type Ring,
  ringBounds,
  type TablePoint,
} from '../../geometry'
import {
  type Box,
  type DrawItem,
  type DrawingScale,
  type DrawingView,
  STROKES,
  type Stroke,
  type TextItem,
  centredText,
  centredView,
  firstFreeText,
  hatchRegion,
  linearDimension,
  linesOf,
  onSheet,
  pickScale,
  textCorners,
} from '../../drawing'
import type { TableSideName } from '../schema'
import { laidEdge } from './laidEdge'
import { laidEndNames } from './layList'
import { pieceLabel } from './pieceLabel'
import { type SheetInput, sideName } from './sheetInput'
import { SIZE } from './sheetStyle'
import { HATCH, regionOnSheet, ringOnSheet } from './slabLines'

export interface TableDrawing {
  readonly items: readonly DrawItem[]
  readonly scale: DrawingScale
}

/** Room for dimension lines on the left and below, mm of paper; for the blank's dimensions above and on the right. */
const DIMENSION_MM = 10
const NEAR_SIDE_MM = 4.5

/** The top as it is put together: wood, laid pieces, resin, with its sizes; null: no usual scale fits. */
export function tableDrawing(input: SheetInput, box: Box): TableDrawing | null {
  const { coverage, footprint } = input
  const gaps = coverage.gaps.map(({ region }) => region)
  const laid = coverage.placed.flatMap(({ inBlank }) => inBlank)
  const regions: readonly Region<TablePoint>[] = [...coverage.mainWood, ...laid, ...gaps]
  const bounds = ringBounds([...footprint.finished, ...regions.flatMap(({ outer }) => outer)])
  const room: Box = {
    xMm: box.xMm + 2 * DIMENSION_MM,
    yMm: box.yMm,
    widthMm: box.widthMm - 2 * DIMENSION_MM,
    heightMm: box.heightMm - 2 * DIMENSION_MM,
  }
  if (room.widthMm <= 0 || room.heightMm <= 0) return null
  const size = { widthMm: bounds.maxX - bounds.minX, heightMm: bounds.maxY - bounds.minY }
  const scale = pickScale(size, room, input.display.system)
  if (scale === null) return null
  const view = centredView(scale, bounds, room)
  const lines = tableLines(input, view, regions.slice(0, coverage.mainWood.length), laid, gaps)
  const dimensions = tableDimensions(input, view, bounds)
  const labels = tableLabels(input, view, { drawn: [...lines, ...dimensions], within: box })
  return { items: [...lines, ...dimensions, ...labels], scale }
}

function tableLines(
  { footprint }: SheetInput,
  view: DrawingView,
  wood: readonly Region[],
  laid: readonly Region[],
  gaps: readonly Region[],
): readonly DrawItem[] {
  const placed = gaps.map((gap) => regionOnSheet(view, gap))
  const outlines = (rings: readonly Ring[], stroke: Stroke): DrawItem => ({
    kind: 'polygon',
    rings: rings.map((ring) => ringOnSheet(view, ring)),
    stroke,
    fill: null,
  })
  return [
    {
      kind: 'polygon',
      rings: laid.flatMap(({ outer, holes }) => [outer, ...holes]).map((ring) => ringOnSheet(view, ring)),
      stroke: null,
      fill: 'shade',
    },
    { kind: 'segments', segments: placed.flatMap((gap) => hatchRegion(gap, HATCH)), stroke: STROKES.hatch },
    outlines(
      [...laid, ...gaps].flatMap(({ outer, holes }) => [outer, ...holes]),
      STROKES.opening,
    ),
    outlines(
      wood.map(({ outer }) => outer),
      STROKES.outline,
    ),
    outlines([footprint.finished], STROKES.finished),
  ]
}

/** Finished length and width nearest to the table, what is cast over all further out where it is larger. */
function tableDimensions(
  { footprint, length }: SheetInput,
  view: DrawingView,
  cast: { readonly minX: number; readonly minY: number; readonly maxX: number; readonly maxY: number },
): readonly DrawItem[] {
  const done = ringBounds(footprint.finished)
  const [left, bottom] = [onSheet(view, [cast.minX, 0])[0], onSheet(view, [0, cast.maxY])[1]]
  const across = (fromMm: number, toMm: number, rowMm: number): readonly DrawItem[] => {
    const from: Point = [onSheet(view, [fromMm, 0])[0], bottom]
    const to: Point = [onSheet(view, [toMm, 0])[0], bottom]
    return linearDimension({ from, to, offsetMm: rowMm, text: length(toMm - fromMm), sizeMm: SIZE.figure })
  }
  const down = (fromMm: number, toMm: number, rowMm: number): readonly DrawItem[] => {
    const from: Point = [left, onSheet(view, [0, fromMm])[1]]
    const to: Point = [left, onSheet(view, [0, toMm])[1]]
    return linearDimension({ from, to, offsetMm: rowMm, text: length(toMm - fromMm), sizeMm: SIZE.figure })
  }
  const larger = (a: number, b: number): boolean => length(a) !== length(b)
  return textsLast([
    ...across(done.minX, done.maxX, DIMENSION_MM - 2),
    ...down(done.minY, done.maxY, DIMENSION_MM - 2),
    ...(larger(cast.maxX - cast.minX, done.maxX - done.minX)
      ? across(cast.minX, cast.maxX, 2 * DIMENSION_MM - 3)
      : []),
    ...(larger(cast.maxY - cast.minY, done.maxY - done.minY)
      ? down(cast.minY, cast.maxY, 2 * DIMENSION_MM - 3)
      : []),
  ])
}

/** The text of a short dimension stands beyond its end, where a line of the next one may pass: the line is broken there. */
function textsLast(items: readonly DrawItem[]): readonly DrawItem[] {
  const lines = items.filter(({ kind }) => kind !== 'text')
  const texts = items.filter((item) => item.kind === 'text').map((item) => ({ ...item, plate: true }))
  return [...lines, ...texts]
}

function tableLabels(
  input: SheetInput,
  view: DrawingView,
  { drawn, within }: { readonly drawn: readonly DrawItem[]; readonly within: Box },
): readonly DrawItem[] {
  const taken: (readonly Point[])[] = drawn.flatMap((item) =>
    item.kind === 'text' ? [textCorners(item)] : [],
  )
  const edges = drawn.flatMap((item) => (item.kind === 'polygon' ? linesOf(item) : []))
  const labels: DrawItem[] = []
  const place = (candidates: readonly TextItem[]): void => {
    const free =
      firstFreeText(candidates, [...taken, ...edges], within) ?? firstFreeText(candidates, taken, within)
    if (free === null) return
    taken.push(textCorners(free))
    labels.push(free)
  }
  for (const side of ['start', 'end', 'far', 'near'] as const) place(sideCandidates(side, input, view))
  for (const piece of input.coverage.placed) {
    const name = input.text.sheetPiece({ name: piece.name })
    for (const region of piece.inBlank) {
      const place = { anchor: onSheet(view, interiorPoint(region)), region: regionOnSheet(view, region) }
      const label = pieceLabel(name, place, { taken, heavy: edges, within })
      if (label === null) continue
      taken.push(textCorners(label.text), ...label.leader.flatMap(linesOf))
      labels.push(...label.leader, label.text)
    }
  }
  const ends = laidEnds(input, view)
  const dots = ends.map(({ at }): DrawItem => endDot(at))
  labels.push(...dots)
  taken.push(...dots.flatMap(linesOf))
  for (const end of ends) place(endCandidates(end))
  return labels
}

/** Dot on an end of a laid piece's sawn edge, and how far its name stands off, mm of paper. */
const END_RADIUS_MM = 0.6
const END_OFF_MM = [3, 5, 7] as const

const endDot = (centre: Point): DrawItem => ({
  kind: 'circle',
  centre,
  radiusMm: END_RADIUS_MM,
  stroke: null,
  fill: 'black',
})

interface LaidEnd {
  readonly name: string
  readonly at: Point
}

const laidEnds = ({ coverage, footprint }: SheetInput, view: DrawingView): readonly LaidEnd[] =>
  coverage.placed.flatMap((laid) => {
    const edge = laidEdge(laid, footprint.blank)
    if (edge === null) return []
    const [first, second] = laidEndNames(laid.name)
    return [
      { name: first, at: onSheet(view, edge.from) },
      { name: second, at: onSheet(view, edge.to) },
    ]
  })

const endCandidates = ({ name, at: [x, y] }: LaidEnd): readonly TextItem[] =>
  END_OFF_MM.flatMap((off) =>
    [
      [0, off],
      [0, -off],
      [off, off],
      [-off, off],
      [off, -off],
      [-off, -off],
    ].map(([dx = 0, dy = 0]) => centredText(name, [x + dx, y + dy], { sizeMm: SIZE.note, plate: true })),
  )

/** The side's name along it, just inside. */
function sideCandidates(side: TableSideName, input: SheetInput, view: DrawingView): readonly TextItem[] {
  const { minX, minY, maxX, maxY } = ringBounds(input.footprint.finished)
  const [left, top] = onSheet(view, [minX, minY])
  const [right, bottom] = onSheet(view, [maxX, maxY])
  const upright = side === 'start' || side === 'end'
  const style = { sizeMm: SIZE.note, plate: true, angleRad: upright ? -Math.PI / 2 : 0 }
  const name = sideName(input.text, side)
  return [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9].map((share) => {
    const [x, y] = [left + (right - left) * share, top + (bottom - top) * share]
    const at = {
      start: [left + NEAR_SIDE_MM, y],
      end: [right - NEAR_SIDE_MM, y],
      far: [x, top + NEAR_SIDE_MM],
      near: [x, bottom - NEAR_SIDE_MM],
    } as const
    return centredText(name, at[side], style)
  })
}
