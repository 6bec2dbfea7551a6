export type { Orientation, PaperName, PaperSize } from './paperSize'
export { paperSize } from './paperSize'
export type {
  Box,
  CircleItem,
  DrawItem,
  Fill,
  Ink,
  PolygonItem,
  PolylineItem,
  Segment,
  SegmentsItem,
  Sheet,
  Stroke,
  TextAnchor,
  TextItem,
  TextWeight,
} from './sheet'
export { STROKES } from './strokes'
export { CAP_HEIGHT, SHEET_FONT_FAMILY, SHEET_FONT_WEIGHT, printableText, textWidthMm } from './textMetrics'
export type { TextRoom } from './wrapText'
export { shortenText, wrapText } from './wrapText'
export type { TextStyle } from './textItems'
export { centredText, textBlock, textItem } from './textItems'
export { textBox, textCorners } from './textBox'
export type { DrawingScale, DrawingView } from './drawingScale'
export { centredView, onSheet, pickScale, scaleText } from './drawingScale'
export type { HatchStyle } from './hatchRegion'
export { hatchRegion } from './hatchRegion'
export { clipSegment } from './clipSegment'
export { arrowHead } from './arrowHead'
export type { LinearDimension } from './linearDimension'
export { linearDimension, uprightAngle } from './linearDimension'
export type { SpreadLabel } from './spreadLabels'
export { spreadLabels } from './spreadLabels'
export { convexOverlap } from './convexOverlap'
export { firstFreeText } from './placeText'
export type { Callout, CalloutRow } from './callouts'
export { LEADER_ZONE_MM, calloutRow, calloutRowHeightMm } from './callouts'
export type { ScaleBar } from './scaleBar'
export { scaleBar, scaleBarLengthMm } from './scaleBar'
export type { Block } from './block'
export { columnsBlock, flowBlocks, stackBlocks } from './block'
export type { ParagraphStyle, TableColumn, TableRowStyle } from './textBlocks'
export { listItem, paragraph, tableRow } from './textBlocks'
export { linesOf } from './sheetLines'
export type { SheetProblem } from './sheetProblems'
export { UNPRINTED_BORDER_MM, sheetProblems } from './sheetProblems'
export { sheetToSvg } from './sheetToSvg'
export type { DrawingLayer, LayeredDrawing, LayerShape } from './layeredDrawing'
export { layersBounds } from './layeredDrawing'
export { layersToDxf } from './layersToDxf'
export { layersToSvg } from './layersToSvg'
export type { Tile } from './tileGrid'
export { tileGrid } from './tileGrid'
