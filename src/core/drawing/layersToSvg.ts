import type { Point } from '../geometry'
import type { LayeredDrawing, LayerShape } from './layeredDrawing'
import { layersBounds } from './layeredDrawing'
import { svgText } from './svgText'
import { SHEET_FONT_FAMILY } from './textMetrics'

/** Lines of another program's drawing: thin, in mm. */
const LINE_MM = 0.5
const AIR_MM = 10
const COLOURS = ['#000000', '#c00000', '#0040c0', '#007a33', '#8a00b0']

const mm = (value: number): string => String(Math.round(value * 10_000) / 10_000 || 0)
const pair = ([x, y]: Point): string => `${mm(x)} ${mm(y)}`

function element(shape: LayerShape, colour: string): string {
  switch (shape.kind) {
    case 'line':
      return `<path d="M${pair(shape.from)}L${pair(shape.to)}"/>`
    case 'ring':
      return `<path d="M${shape.points.map(pair).join('L')}Z"/>`
    case 'label': {
      const [x, y] = shape.at
      const paint = `font-size="${mm(shape.heightMm / 0.66)}" fill="${colour}" stroke="none"`
      return `<text x="${mm(x)}" y="${mm(y)}" ${paint}>${svgText(shape.text)}</text>`
    }
  }
}

/**
 * A drawing as SVG in real units: as large as what is drawn, 1 unit to the mm, a group for each layer by its name.
 * @returns markup; places to 0.0001 mm; texts escaped
 * Rules: DRW-13.
 */
export function layersToSvg(drawing: LayeredDrawing): string {
  const bounds = layersBounds(drawing) ?? { minX: 0, minY: 0, maxX: 0, maxY: 0 }
  const [left, top] = [bounds.minX - AIR_MM, bounds.minY - AIR_MM]
  const width = mm(bounds.maxX - bounds.minX + 2 * AIR_MM)
  const height = mm(bounds.maxY - bounds.minY + 2 * AIR_MM)
  const groups = drawing.layers.flatMap(({ name, shapes }, k) => {
    const colour = COLOURS[k % COLOURS.length] ?? '#000000'
    return [
      `<g id="${name}" fill="none" stroke="${colour}" stroke-width="${LINE_MM}">`,
      ...shapes.map((shape) => element(shape, colour)),
      '</g>',
    ]
  })
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm"` +
      ` viewBox="${mm(left)} ${mm(top)} ${width} ${height}" font-family="'${SHEET_FONT_FAMILY}', sans-serif">`,
    `<title>${svgText(drawing.title)}</title>`,
    ...groups,
    '</svg>',
    '',
  ].join('\n')
}
