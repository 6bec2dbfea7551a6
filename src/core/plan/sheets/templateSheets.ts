import type { Bounds, Point } from '../../geometry'
import {
  type Box,
  clipSegment,
  type DrawItem,
  type LayeredDrawing,
  layersBounds,
  type LayerShape,
  type Orientation,
  type PaperName,
  type Segment,
  type Sheet,
  stackBlocks,
  paragraph,
  STROKES,
  type Stroke,
  textItem,
  CAP_HEIGHT,
  type Tile,
  tileGrid,
} from '../../drawing'
import { formatLength } from '../../units'
import { type DrawingFrame, planDrawing, type TakeAwayInput } from '../takeAway/planDrawing'
import { contentBox, framedSheets } from './sheetFrame'
import { SIZE } from './sheetStyle'

/** How far tiles lie over each other: wide enough for tape. Common practice, no source. */
export const TEMPLATE_OVERLAP_MM = 15
/** Strip beside the tile for its name and the square, mm. */
const ASIDE_MM = 56
const AIR_MM = 3
const CROSS_MM = 4

export interface TemplateRequest {
  readonly frame: DrawingFrame
  /** Part of the length that is wanted, mm along the frame; null: all of it. */
  readonly stretchMm: readonly [fromMm: number, toMm: number] | null
  readonly paper: PaperName
}

export interface TemplateSheet {
  readonly sheet: Sheet
  readonly tile: Tile
  /** Part of the sheet that shows the drawing; the tile's top-left place lies in its top-left corner, in true size. */
  readonly window: Box
}

/** What is worth a full-size line, and how it is drawn. */
const LAYER_STROKES: readonly (readonly [layer: string, stroke: Stroke])[] = [
  ['outline', STROKES.outline],
  ['pieces', STROKES.opening],
  ['table', STROKES.finished],
  ['cuts', STROKES.cut],
]

interface Layout {
  readonly orientation: Orientation
  readonly window: Box
  readonly aside: Box
}

function layoutOf(paper: PaperName, orientation: Orientation): Layout {
  const box = contentBox(paper, orientation)
  if (orientation === 'landscape') {
    const widthMm = box.widthMm - ASIDE_MM - AIR_MM
    const aside = { ...box, xMm: box.xMm + widthMm + AIR_MM, widthMm: ASIDE_MM }
    return { orientation, window: { ...box, widthMm }, aside }
  }
  const heightMm = box.heightMm - ASIDE_MM - AIR_MM
  const aside = { ...box, yMm: box.yMm + heightMm + AIR_MM, heightMm: ASIDE_MM }
  return { orientation, window: { ...box, heightMm }, aside }
}

const segmentsOf = (shape: LayerShape): readonly Segment[] => {
  if (shape.kind === 'label') return []
  if (shape.kind === 'line') return [[shape.from, shape.to]]
  return shape.points.map((from, k): Segment => [from, shape.points[(k + 1) % shape.points.length] ?? from])
}

interface Lines {
  readonly stroke: Stroke
  readonly segments: readonly Segment[]
}

const linesIn = (drawing: LayeredDrawing): readonly Lines[] =>
  LAYER_STROKES.map(([name, stroke]) => ({
    stroke,
    segments: drawing.layers
      .filter((layer) => layer.name === name)
      .flatMap(({ shapes }) => shapes.flatMap(segmentsOf)),
  }))

/** The lines that lie on a tile, moved to where it shows them. */
function onTile(lines: readonly Lines[], tile: Tile, { window }: Layout): readonly Lines[] {
  const move = ([x, y]: Point): Point => [x - tile.leftMm + window.xMm, y - tile.topMm + window.yMm]
  return lines.map(({ stroke, segments }) => ({
    stroke,
    segments: segments.flatMap(([from, to]): readonly Segment[] => {
      const clipped = clipSegment([move(from), move(to)], window)
      return clipped === null ? [] : [clipped]
    }),
  }))
}

/** Crosses in the middle of the overlaps: the same four places of the drawing on each tile that shows them. */
function crosses({ xMm, yMm, widthMm, heightMm }: Box): DrawItem {
  const half = TEMPLATE_OVERLAP_MM / 2
  const places = [xMm + half, xMm + widthMm - half].flatMap((x) =>
    [yMm + half, yMm + heightMm - half].map((y): Point => [x, y]),
  )
  const segments = places.flatMap(([x, y]): readonly Segment[] => [
    [
      [x - CROSS_MM, y],
      [x + CROSS_MM, y],
    ],
    [
      [x, y - CROSS_MM],
      [x, y + CROSS_MM],
    ],
  ])
  return { kind: 'segments', segments, stroke: STROKES.frame }
}

const rectangle = (
  xMm: number,
  yMm: number,
  widthMm: number,
  heightMm: number,
  stroke: Stroke,
): DrawItem => ({
  kind: 'polygon',
  rings: [
    [
      [xMm, yMm],
      [xMm + widthMm, yMm],
      [xMm + widthMm, yMm + heightMm],
      [xMm, yMm + heightMm],
    ],
  ],
  stroke,
  fill: null,
})

/** A, B, … Z, AA: rows of tiles. */
export const tileName = ({ row, column }: Tile): string => {
  const letter = String.fromCharCode(65 + (row % 26))
  return `${row >= 26 ? String.fromCharCode(64 + Math.floor(row / 26)) : ''}${letter}${column + 1}`
}

/** The tile's name, the square to be measured, and how tiles are put together. */
function asideItems(input: TakeAwayInput, tile: Tile, { aside, orientation }: Layout): readonly DrawItem[] {
  const { text, display } = input
  const squareMm = display.system === 'mm' ? 50 : 50.8
  const words = [
    paragraph(
      display.system === 'mm' ? text.sheetTemplateSquareMm : text.sheetTemplateSquareInch,
      noteStyle(aside, orientation),
    ),
    paragraph(
      text.sheetTemplateTape({ overlap: formatLength(TEMPLATE_OVERLAP_MM, display) }),
      noteStyle(aside, orientation),
    ),
    paragraph(text.sheetTemplateCheck, noteStyle(aside, orientation)),
  ]
  const [left, top] =
    orientation === 'landscape'
      ? [aside.xMm, aside.yMm + 12 + squareMm]
      : [aside.xMm + squareMm + 6, aside.yMm + 12]
  const nameX = orientation === 'landscape' ? aside.xMm : left
  const squareTop = orientation === 'landscape' ? aside.yMm + 9 : aside.yMm + 1
  return [
    textItem(text.sheetTemplateTile({ tile: tileName(tile) }), [nameX, aside.yMm + CAP_HEIGHT * SIZE.title], {
      sizeMm: SIZE.title,
      weight: 'bold',
    }),
    rectangle(aside.xMm, squareTop, squareMm, squareMm, STROKES.frame),
    ...stackBlocks(words, { xMm: left, yMm: top }),
  ]
}

const noteStyle = (aside: Box, orientation: Orientation) => ({
  sizeMm: SIZE.note,
  widthMm: orientation === 'landscape' ? aside.widthMm : aside.widthMm - 58,
  spaceBeforeMm: 2,
})

/** The stretch that is wanted, within what there is to draw. */
function stretchBounds(drawing: LayeredDrawing, stretchMm: TemplateRequest['stretchMm']): Bounds | null {
  const drawn = drawing.layers.filter(({ name }) => LAYER_STROKES.some(([layer]) => layer === name))
  const bounds = layersBounds({ title: '', layers: drawn })
  if (bounds === null || stretchMm === null) return bounds
  const minX = Math.max(bounds.minX, Math.min(...stretchMm))
  const maxX = Math.min(bounds.maxX, Math.max(...stretchMm))
  return maxX > minX ? { ...bounds, minX, maxX } : null
}

function tilesOf(
  lines: readonly Lines[],
  bounds: Bounds,
  layout: Layout,
): readonly (readonly [Tile, readonly Lines[]])[] {
  return tileGrid(bounds, layout.window, TEMPLATE_OVERLAP_MM)
    .map((tile) => [tile, onTile(lines, tile, layout)] as const)
    .filter(([, shown]) => shown.some(({ segments }) => segments.length > 0))
}

/**
 * The outline in true size on pages to be taped together, the fewer pages of upright and lying. Pages on which no line
 * lies are left out.
 * @returns none where the stretch holds nothing
 * Rules: SHT-14.
 */
export function templateSheets(input: TakeAwayInput, request: TemplateRequest): readonly TemplateSheet[] {
  const drawing = planDrawing(input, request.frame)
  const bounds = stretchBounds(drawing, request.stretchMm)
  if (bounds === null) return []
  const lines = linesIn(drawing)
  const ways = (['landscape', 'portrait'] as const).map((orientation) => {
    const layout = layoutOf(request.paper, orientation)
    return { layout, tiles: tilesOf(lines, bounds, layout) }
  })
  const [best] = ways.toSorted((a, b) => a.tiles.length - b.tiles.length)
  if (best === undefined) return []
  const { layout, tiles } = best
  const pages = tiles.map(([tile, shown]) => ({
    title: input.text.sheetTitleTemplate,
    about: [input.plan.name, input.text.sheetTemplateTile({ tile: tileName(tile) })].join(' · '),
    items: [
      rectangle(
        layout.window.xMm,
        layout.window.yMm,
        layout.window.widthMm,
        layout.window.heightMm,
        STROKES.helper,
      ),
      crosses(layout.window),
      ...shown.map(({ stroke, segments }): DrawItem => ({ kind: 'segments', segments, stroke })),
      ...asideItems(input, tile, layout),
    ],
  }))
  const sheets = framedSheets(pages, { ...input, paper: request.paper, orientation: layout.orientation })
  return sheets.flatMap((sheet, k) => {
    const tile = tiles[k]?.[0]
    return tile === undefined ? [] : [{ sheet, tile, window: layout.window }]
  })
}
