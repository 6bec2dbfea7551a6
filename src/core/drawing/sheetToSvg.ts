import type { Point } from '../geometry'
import type { CircleItem, DrawItem, Fill, Ink, PolygonItem, Sheet, Stroke, TextItem } from './sheet'
import { PLATE_MARGIN_MM, textCorners } from './textBox'
import { svgText } from './svgText'
import { SHEET_FONT_FAMILY, SHEET_FONT_WEIGHT } from './textMetrics'

const INKS: Readonly<Record<Ink, string>> = { black: '#000', grey: '#777' }
const FILLS: Readonly<Record<Fill, string>> = { white: '#fff', black: '#000', shade: '#ececec' }

/** Micrometres: a thousand times finer than print, and short. */
const mm = (value: number): string => String(Math.round(value * 1000) / 1000 || 0)

const pair = ([x, y]: Point): string => `${mm(x)} ${mm(y)}`
const openPath = (points: readonly Point[]): string => `M${points.map(pair).join('L')}`
const attribute = (name: string, value: string): string => ` ${name}="${value}"`

function strokeAttributes(stroke: Stroke | null): string {
  if (stroke === null) return ''
  const dash = stroke.dashMm ? attribute('stroke-dasharray', stroke.dashMm.map(mm).join(' ')) : ''
  return `${attribute('stroke', INKS[stroke.ink ?? 'black'])}${attribute('stroke-width', mm(stroke.widthMm))}${dash}`
}

const fillAttribute = (fill: Fill | null): string => attribute('fill', fill === null ? 'none' : FILLS[fill])

const pathElement = (d: string, paint: string): string => `<path${attribute('d', d)}${paint}/>`

const polygonElement = ({ rings, stroke, fill }: PolygonItem): string =>
  pathElement(
    rings.map((ring) => `${openPath(ring)}Z`).join(''),
    `${fillAttribute(fill)}${attribute('fill-rule', 'evenodd')}${strokeAttributes(stroke)}`,
  )

const circleElement = ({ centre, radiusMm, stroke, fill }: CircleItem): string =>
  `<circle${attribute('cx', mm(centre[0]))}${attribute('cy', mm(centre[1]))}${attribute('r', mm(radiusMm))}` +
  `${fillAttribute(fill)}${strokeAttributes(stroke)}/>`

function textElement(item: TextItem): string {
  const [x, y] = item.at
  const degrees = (item.angleRad * 180) / Math.PI
  const turn = item.angleRad === 0 ? '' : attribute('transform', `rotate(${mm(degrees)} ${pair(item.at)})`)
  const plate = item.plate
    ? pathElement(`${openPath(textCorners(item, PLATE_MARGIN_MM))}Z`, fillAttribute('white'))
    : ''
  return (
    `${plate}<text${attribute('x', mm(x))}${attribute('y', mm(y))}${attribute('font-size', mm(item.sizeMm))}` +
    `${attribute('font-weight', String(SHEET_FONT_WEIGHT[item.weight]))}` +
    `${item.anchor === 'start' ? '' : attribute('text-anchor', item.anchor)}` +
    `${item.reversed ? fillAttribute('white') : ''}${turn}>${svgText(item.text)}</text>`
  )
}

function element(item: DrawItem): string {
  switch (item.kind) {
    case 'segments':
      return item.segments.length === 0
        ? ''
        : pathElement(item.segments.map(openPath).join(''), strokeAttributes(item.stroke))
    case 'polyline':
      return pathElement(openPath(item.points), `${fillAttribute(null)}${strokeAttributes(item.stroke)}`)
    case 'polygon':
      return polygonElement(item)
    case 'circle':
      return circleElement(item)
    case 'text':
      return textElement(item)
  }
}

/**
 * A sheet as an SVG document in true size: width and height in mm, one user unit to the mm.
 * Kerning and ligatures are off, so that a text is as wide as the layout took it to be.
 * @returns markup; texts are escaped; coordinates to 0.001 mm
 * Rules: DRW-11.
 */
export function sheetToSvg(sheet: Sheet): string {
  const [width, height] = [mm(sheet.widthMm), mm(sheet.heightMm)]
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}"` +
      ` font-family="'${SHEET_FONT_FAMILY}', sans-serif" stroke-linejoin="round"` +
      ` style="font-kerning:none;font-variant-ligatures:none;font-variant-numeric:tabular-nums;white-space:pre">`,
    `<title>${svgText(sheet.title)}</title>`,
    ...sheet.items.map(element).filter((markup) => markup !== ''),
    '</svg>',
  ].join('\n')
}
