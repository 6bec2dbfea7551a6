import { choleskyFactor, choleskySolve, gramMatrix, matrixFromRows, transposeTimes } from './matrix'
import { median } from './pixelWindow'

/** offset = c₀ + c₁·s + c₂·s²: an edge as the lens may bow it, in the frame of its clicked ends. */
export interface EdgeCurve {
  readonly coefficients: readonly [number, number, number]
  readonly rms: number
  readonly kept: number
}

export interface CurvePoint {
  /** −1 to 1 along the edge. */
  readonly s: number
  readonly offset: number
}

export const curveAt = ({ coefficients: c }: Pick<EdgeCurve, 'coefficients'>, s: number): number =>
  c[0] + s * (c[1] + s * c[2])

/**
 * A parabola through points with outliers; null for fewer than five.
 * Method: least squares, five rounds, points beyond three times the median residual (and `floor`) left out.
 */
export function fitCurve(points: readonly CurvePoint[], floor = 0.3): EdgeCurve | null {
  let kept = points
  let curve: EdgeCurve | null = null
  for (let round = 0; round < 5; round++) {
    curve = parabola(kept)
    if (curve === null) return null
    const fitted = curve
    const residuals = points.map((p) => Math.abs(p.offset - curveAt(fitted, p.s)))
    const limit = Math.max(3 * median(residuals), floor)
    kept = points.filter((_, i) => (residuals[i] ?? 0) <= limit)
  }
  return curve
}

function parabola(points: readonly CurvePoint[]): EdgeCurve | null {
  if (points.length < 5) return null
  const design = matrixFromRows(points.map(({ s }) => [1, s, s * s]))
  const lower = choleskyFactor(gramMatrix(design))
  if (lower === null) return null
  const [a = 0, b = 0, c = 0] = choleskySolve(
    lower,
    transposeTimes(
      design,
      points.map((p) => p.offset),
    ),
  )
  const curve = { coefficients: [a, b, c] as const, rms: 0, kept: points.length }
  const squares = points.reduce((sum, p) => sum + (p.offset - curveAt(curve, p.s)) ** 2, 0)
  return { ...curve, rms: Math.sqrt(squares / points.length) }
}

/** Candidates within this of a trial line support it, px. */
const SUPPORT_PX = 0.9

/**
 * The straight run that most stations support, as a start for the parabola: of runs with nearly as much support the
 * one with the least offset (the innermost edge).
 * @param candidates per station the offsets at which there is an edge
 * @returns offset at s = −1 and s = 1, and the share of stations that support it
 * Method: every pairing of a coarse grid of end offsets is tried: no chance, no seed.
 */
export function innermostRun(
  candidates: readonly { readonly s: number; readonly offsets: readonly number[] }[],
  reachPx: number,
): { readonly from: number; readonly to: number; readonly share: number } | null {
  const runs: { from: number; to: number; share: number }[] = []
  for (let from = -reachPx; from <= reachPx; from += 0.5) {
    for (let to = -reachPx; to <= reachPx; to += 0.5) {
      const supported = candidates.filter(({ s, offsets }) => {
        const at = (from * (1 - s) + to * (1 + s)) / 2
        return offsets.some((offset) => Math.abs(offset - at) < SUPPORT_PX)
      }).length
      runs.push({ from, to, share: supported / candidates.length })
    }
  }
  const best = Math.max(...runs.map((r) => r.share))
  const good = runs.filter((r) => r.share > Math.max(0.8 * best, 0.4))
  const innermost = good.sort((p, q) => p.from + p.to - (q.from + q.to))[0]
  if (!innermost) return null
  // Of the runs that are the same edge, the best supported.
  const same = good.filter(
    (r) => Math.abs(r.from - innermost.from) < 2.5 && Math.abs(r.to - innermost.to) < 2.5,
  )
  return same.sort((p, q) => q.share - p.share)[0] ?? null
}
