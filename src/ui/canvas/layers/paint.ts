import { type Point, ringBounds } from '../../../core/geometry'
import type { Ink } from '../ink'
import type { PlacedLabel } from '../labels'
import { type Camera, screenOf } from '../view'
import type { WorldPath } from '../worldPaths'

export type Brush = CanvasRenderingContext2D

/** Lays paths down for the next stroke or fill. */
export function layPaths(brush: Brush, camera: Camera, paths: readonly WorldPath[], closed: boolean): void {
  brush.beginPath()
  for (const path of paths) {
    path.forEach((point, i) => {
      const [x, y] = screenOf(camera, point)
      if (i === 0) brush.moveTo(x, y)
      else brush.lineTo(x, y)
    })
    if (closed) brush.closePath()
  }
}

export interface Stroke {
  readonly colour: string
  readonly widthPx: number
  readonly dashPx?: readonly number[]
  /** A wider, lighter line beneath, so that it shows on any wood. */
  readonly halo?: string
}

/** Strokes the paths that were laid down. */
export function stroke(brush: Brush, { colour, widthPx, dashPx, halo }: Stroke): void {
  brush.lineJoin = 'round'
  brush.lineCap = 'butt'
  if (halo !== undefined) {
    brush.setLineDash([])
    brush.strokeStyle = halo
    brush.lineWidth = widthPx + 3
    brush.globalAlpha = 0.75
    brush.stroke()
    brush.globalAlpha = 1
  }
  brush.setLineDash([...(dashPx ?? [])])
  brush.strokeStyle = colour
  brush.lineWidth = widthPx
  brush.stroke()
  brush.setLineDash([])
}

/** Fills the paths that were laid down, holes left open. */
export function fill(brush: Brush, colour: string, opacity: number): void {
  brush.globalAlpha = opacity
  brush.fillStyle = colour
  brush.fill('evenodd')
  brush.globalAlpha = 1
}

/** Line spacing of the two hatches, screen px. Resin leans right and is close; a void leans left and is wide. */
const HATCH = {
  resin: { spacingPx: 7, widthPx: 1.6, leansRight: true },
  void: { spacingPx: 9, widthPx: 1.2, leansRight: false },
} as const

export type HatchKind = keyof typeof HATCH

/** Hatches closed paths. The lines keep their spacing on screen, and move with the picture when it is moved. */
export function hatch(
  brush: Brush,
  camera: Camera,
  paths: readonly WorldPath[],
  kind: HatchKind,
  colour: string,
): void {
  const points = paths.flat().map((point) => screenOf(camera, point))
  if (points.length === 0) return
  const { spacingPx, widthPx, leansRight } = HATCH[kind]
  const { minX, minY, maxX, maxY } = ringBounds(points)
  layPaths(brush, camera, paths, true)
  brush.save()
  brush.clip('evenodd')
  const height = maxY - minY
  const step = spacingPx * Math.SQRT2
  // Each line meets the box's upper edge at x = c; c is taken modulo the step from a place that moves with the world.
  const [left, right] = leansRight ? [minX, maxX + height] : [minX - height, maxX]
  const anchor = leansRight ? camera.x + camera.y - minY : camera.x - camera.y + minY
  const first = anchor + Math.ceil((left - anchor) / step) * step
  brush.beginPath()
  for (let c = first; c <= right; c += step) {
    brush.moveTo(c, minY)
    brush.lineTo(leansRight ? c - height : c + height, maxY)
  }
  brush.strokeStyle = colour
  brush.lineWidth = widthPx
  brush.stroke()
  brush.restore()
}

/** A straight line with a short bar across each end, as on a drawing. */
export function dimensionLine(brush: Brush, from: Point, to: Point, line: Stroke): void {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  if (length === 0) return
  const across: Point = [(-(to[1] - from[1]) / length) * 6, ((to[0] - from[0]) / length) * 6]
  brush.beginPath()
  brush.moveTo(from[0], from[1])
  brush.lineTo(to[0], to[1])
  for (const end of [from, to]) {
    brush.moveTo(end[0] - across[0], end[1] - across[1])
    brush.lineTo(end[0] + across[0], end[1] + across[1])
  }
  stroke(brush, line)
}

export function disc(brush: Brush, [x, y]: Point, radiusPx: number): void {
  brush.beginPath()
  brush.arc(x, y, radiusPx, 0, 2 * Math.PI)
}

/** Plates for text: enough contrast over any photo. */
export const PLATE = { paddingPx: 6, heightPx: (ink: Ink): number => ink.fontPx + 9 } as const

const fontOf = (ink: Ink, strong: boolean): string => `${strong ? 700 : 500} ${ink.fontPx}px ${ink.font}`

/** Width of a plate for a text, px. */
export function plateWidth(brush: Brush, ink: Ink, text: string, strong: boolean): number {
  brush.font = fontOf(ink, strong)
  return brush.measureText(text).width + 2 * PLATE.paddingPx
}

export function plate(brush: Brush, ink: Ink, label: PlacedLabel): void {
  const { at, width, height, text, strong } = label
  brush.beginPath()
  brush.roundRect(at[0] - width / 2, at[1] - height / 2, width, height, 2)
  fill(brush, strong ? ink.accent : ink.paper, 0.94)
  stroke(brush, { colour: strong ? ink.paper : ink.inkSoft, widthPx: 1 })
  brush.font = fontOf(ink, strong)
  brush.textAlign = 'center'
  brush.textBaseline = 'middle'
  brush.fillStyle = strong ? ink.paper : ink.ink
  brush.fillText(text, at[0], at[1] + 1)
}
