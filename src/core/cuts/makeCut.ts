import { type Point, type Region, regionsAreaMm2 } from '../geometry'
import type { Line } from './lineCrossings'
import { splitRegion } from './splitRegion'

export type WasteSide = 'left' | 'right'

export interface StraightCut<P extends Point = Point> {
  readonly line: Line<P>
  readonly kerfMm: number
  /** The side that gives up the kerf, seen from `from` to `to`. */
  readonly wasteSide: WasteSide
}

export interface CutResult<P extends Point> {
  readonly kept: readonly Region<P>[]
  readonly waste: readonly Region<P>[]
  readonly kerfAreaMm2: number
  /** First and last place where the line meets the wood, as distances from the line's `from`, mm; null: it misses. */
  readonly extentMm: readonly [number, number] | null
}

/**
 * One saw cut right through one piece.
 * @param piece connected wood, mm
 * @param cut   kerfMm ≥ 0
 * @returns wood on the kept side of the line, wood beyond the kerf, and the area that turns to dust
 * Rules: CUT-3, CUT-4, CUT-5.
 */
export function makeCut<P extends Point>(piece: Region<P>, cut: StraightCut<P>): CutResult<P> {
  const first = splitRegion(piece, cut.line)
  const [kept, beyond] = cut.wasteSide === 'right' ? [first.left, first.right] : [first.right, first.left]
  const farLine = movedToWaste(cut)
  const beyondKerf = beyond.map((face) => splitRegion(face, farLine))
  const waste = beyondKerf.flatMap((split) => (cut.wasteSide === 'right' ? split.right : split.left))
  const kerf = beyondKerf.flatMap((split) => (cut.wasteSide === 'right' ? split.left : split.right))
  const start = first.crossingsMm[0]
  const end = first.crossingsMm[first.crossingsMm.length - 1]
  return {
    kept,
    waste,
    kerfAreaMm2: regionsAreaMm2(kerf),
    extentMm: start === undefined || end === undefined ? null : [start, end],
  }
}

function movedToWaste<P extends Point>({ line: { from, to }, kerfMm, wasteSide }: StraightCut<P>): Line<P> {
  const lengthMm = Math.hypot(to[0] - from[0], to[1] - from[1])
  const signedMm = wasteSide === 'right' ? kerfMm : -kerfMm
  const dx = (-(to[1] - from[1]) / lengthMm) * signedMm
  const dy = ((to[0] - from[0]) / lengthMm) * signedMm
  // Moving a point keeps it in its plane, so it keeps its brand.
  const moved = (point: P): P => [point[0] + dx, point[1] + dy] as Point as P
  return { from: moved(from), to: moved(to) }
}
