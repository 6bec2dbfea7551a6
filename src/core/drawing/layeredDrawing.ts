import type { Bounds, Point } from '../geometry'
import { ringBounds } from '../geometry'

/** A shape in true size, mm, y down. */
export type LayerShape =
  | { readonly kind: 'ring'; readonly points: readonly Point[] }
  | { readonly kind: 'line'; readonly from: Point; readonly to: Point }
  | { readonly kind: 'label'; readonly text: string; readonly at: Point; readonly heightMm: number }

export interface DrawingLayer {
  /** Letters a to z and `-`: readers of drawings take nothing else for sure. */
  readonly name: string
  readonly shapes: readonly LayerShape[]
}

/** A drawing for other programs: layers of shapes in true size. */
export interface LayeredDrawing {
  readonly title: string
  readonly layers: readonly DrawingLayer[]
}

const pointsOf = (shape: LayerShape): readonly Point[] => {
  switch (shape.kind) {
    case 'ring':
      return shape.points
    case 'line':
      return [shape.from, shape.to]
    case 'label':
      return [shape.at]
  }
}

/** Box round all shapes, mm; null for a drawing without any. */
export function layersBounds({ layers }: LayeredDrawing): Bounds | null {
  const points = layers.flatMap(({ shapes }) => shapes.flatMap(pointsOf))
  return points.length === 0 ? null : ringBounds(points)
}
