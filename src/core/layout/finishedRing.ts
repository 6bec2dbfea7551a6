import { type Ring, type TablePoint, tablePoint } from '../geometry'
import { assertNever, InvariantError } from '../units'

export type TableOutline =
  | { readonly kind: 'rectangle'; readonly lengthMm: number; readonly widthMm: number }
  | {
      readonly kind: 'rounded'
      readonly lengthMm: number
      readonly widthMm: number
      readonly cornerRadiusMm: number
    }
  | { readonly kind: 'oval'; readonly lengthMm: number; readonly widthMm: number }
  | { readonly kind: 'free'; readonly ring: Ring<TablePoint> }

/** Largest distance between a curve and the straight steps that stand for it, mm: a tenth of what a router follows. */
export const CHORD_ERROR_MM = 0.05

/**
 * The finished top's outline.
 * @returns open ring of positive sign, mm; curves within CHORD_ERROR_MM
 * @throws InvariantError when a corner radius does not fit its rectangle (the caller limits it)
 */
export function finishedRing(outline: TableOutline): Ring<TablePoint> {
  switch (outline.kind) {
    case 'rectangle':
      return rectangleRing(0, 0, outline.lengthMm, outline.widthMm)
    case 'rounded':
      return roundedRing(outline)
    case 'oval':
      return ellipseRing(outline.lengthMm, outline.widthMm)
    case 'free':
      return outline.ring
    default:
      return assertNever(outline)
  }
}

/** A rectangle's ring, positive, from its least corner. */
export function rectangleRing(minX: number, minY: number, maxX: number, maxY: number): Ring<TablePoint> {
  return [tablePoint(minX, minY), tablePoint(maxX, minY), tablePoint(maxX, maxY), tablePoint(minX, maxY)]
}

/** Steps in a full turn so that chords of radius r stay within CHORD_ERROR_MM of the arc: r(1 − cos(π/n)) ≤ error. */
function stepsInTurn(radiusMm: number): number {
  const halfAngleRad = Math.acos(Math.max(0, 1 - CHORD_ERROR_MM / Math.max(radiusMm, 2 * CHORD_ERROR_MM)))
  return Math.max(12, 4 * Math.ceil(Math.PI / halfAngleRad / 4))
}

function ellipseRing(lengthMm: number, widthMm: number): Ring<TablePoint> {
  const [a, b] = [lengthMm / 2, widthMm / 2]
  const steps = stepsInTurn(Math.max(a, b))
  return Array.from({ length: steps }, (_, index) => {
    const turn = (2 * Math.PI * index) / steps
    return tablePoint(a + a * Math.cos(turn), b + b * Math.sin(turn))
  })
}

function roundedRing(outline: Extract<TableOutline, { kind: 'rounded' }>): Ring<TablePoint> {
  const { lengthMm, widthMm, cornerRadiusMm: r } = outline
  if (2 * r > Math.min(lengthMm, widthMm)) {
    throw new InvariantError('a corner radius must fit its rectangle', { r, lengthMm, widthMm })
  }
  const steps = stepsInTurn(r) / 4
  const centres = [
    [r, r, Math.PI],
    [lengthMm - r, r, 1.5 * Math.PI],
    [lengthMm - r, widthMm - r, 0],
    [r, widthMm - r, 0.5 * Math.PI],
  ] as const
  return centres.flatMap(([cx, cy, from]) =>
    Array.from({ length: steps + 1 }, (_, index) => {
      const turn = from + (Math.PI / 2) * (index / steps)
      return tablePoint(cx + r * Math.cos(turn), cy + r * Math.sin(turn))
    }),
  )
}
