import type { Point } from '../geometry'
import { ok, type Result } from '../units'
import { levenbergMarquardt } from './levenbergMarquardt'
import { matrixFromRows } from './matrix'
import { singularValues } from './singularValues'
import { layoutStarts, type Side } from './layoutStarts'

export interface MarkDistance {
  readonly id: string
  readonly a: string
  readonly b: string
  readonly lengthMm: number
}

export interface PlacedMark {
  readonly id: string
  readonly at: Point
}

export interface MarkLayoutInput {
  readonly markIds: readonly string[]
  readonly distances: readonly MarkDistance[]
  /** Rough places, in any unit and scale: the marks' pixels do. They settle on which side of a line a mark lies. */
  readonly seedPositions?: readonly PlacedMark[]
}

export interface DistanceResidual {
  readonly distanceId: string
  /** Taped less solved. */
  readonly residualMm: number
}

export interface MarkLayout {
  /** mm; first mark at the origin, second on the x axis; turned as the seeds are. */
  readonly positions: readonly PlacedMark[]
  readonly residuals: readonly DistanceResidual[]
  readonly rmsResidualMm: number
  /** Distances beyond the 2n − 3 that fix the figure. */
  readonly redundancy: number
}

export type LayoutProblemCode =
  | 'marks-too-few'
  | 'distances-too-few'
  | 'distances-impossible'
  | 'distance-unknown-mark'
  | 'distance-not-positive'

/** An InputProblem whose code is one of a known few. */
export interface LayoutProblem {
  readonly code: LayoutProblemCode
  readonly values: Readonly<Record<string, string | number>>
}

interface Refusal {
  readonly ok: false
  readonly problem: LayoutProblem
}
const refuse = (code: LayoutProblemCode, values: LayoutProblem['values']): Refusal => ({
  ok: false,
  problem: { code, values },
})

/** A singular value of the distance equations below this leaves a mark loose: 1 mm of tape would move it by metres. */
const LOOSE_SINGULAR_VALUE = 1e-4

/** Foldings whose distances fit to about this are equally possible; the seeds choose between them. */
const ALIKE_RESIDUAL_MM = 3
/** Triples flatter than this (height over longest side) may turn either way by a misread tape and do not count. */
const FLAT_TRIPLE = 0.06

/**
 * Places of marks on a plane from taped distances between them, by least squares.
 * @returns the layout; problems `marks-too-few` {count}, `distance-unknown-mark` {distanceId},
 *          `distance-not-positive` {distanceId}, `distances-too-few` {needed, given, markId} (a mark that is loose),
 *          `distances-impossible` {distanceId} (a side longer than the way round it)
 * Method: Gauss–Newton with Levenberg–Marquardt damping from several starts; the start whose triples turn as the
 * seeds do and whose residual is least wins. Rules: PHO-5, PHO-6.
 */
export function markPositionsFromDistances(input: MarkLayoutInput): Result<MarkLayout, LayoutProblem> {
  const refusal = refuseDistances(input)
  if (refusal) return refusal
  const indexOf = new Map(input.markIds.map((id, i) => [id, i]))
  const sides = input.distances.map((d) => ({
    a: indexOf.get(d.a) ?? 0,
    b: indexOf.get(d.b) ?? 0,
    lengthMm: d.lengthMm,
  }))
  const seeds = seedPoints(input)
  const solved = layoutStarts(input.markIds.length, sides, seeds).map((start) => solveFrom(start, sides))
  const loose = looseMark(input, sides, solved[0]?.points ?? [])
  if (loose) return loose
  const leastCost = Math.min(...solved.map((s) => s.cost))
  const best = solved
    .filter((s) => s.cost <= 4 * leastCost + sides.length * ALIKE_RESIDUAL_MM ** 2)
    .map((s) => ({ ...s, turned: seeds ? wrongTriples(s.points, seeds) : 0 }))
    .sort((p, q) => p.turned - q.turned || p.cost - q.cost)[0]
  if (!best) return refuse('distances-too-few', { needed: 0, given: 0, markId: '' })
  const residuals = input.distances.map((d, i) => {
    const side = sides[i] ?? { a: 0, b: 0, lengthMm: 0 }
    return { distanceId: d.id, residualMm: side.lengthMm - lengthBetween(best.points, side.a, side.b) }
  })
  return ok({
    positions: input.markIds.map((id, i) => ({ id, at: best.points[i] ?? [0, 0] })),
    residuals,
    rmsResidualMm: Math.sqrt(residuals.reduce((sum, r) => sum + r.residualMm ** 2, 0) / residuals.length),
    redundancy: sides.length - (2 * input.markIds.length - 3),
  })
}

function refuseDistances({ markIds, distances }: MarkLayoutInput): Refusal | null {
  if (markIds.length < 3) return refuse('marks-too-few', { count: markIds.length })
  for (const d of distances) {
    if (!markIds.includes(d.a) || !markIds.includes(d.b) || d.a === d.b) {
      return refuse('distance-unknown-mark', { distanceId: d.id })
    }
    if (!(d.lengthMm > 0)) return refuse('distance-not-positive', { distanceId: d.id })
  }
  const needed = 2 * markIds.length - 3
  const pairs = new Set(distances.map((d) => [d.a, d.b].sort().join(' ')))
  const bare = markIds.find((id) => [...pairs].filter((p) => p.split(' ').includes(id)).length < 2)
  if (bare !== undefined || pairs.size < needed) {
    return refuse('distances-too-few', {
      needed,
      given: pairs.size,
      markId: bare ?? leastTaped(markIds, distances),
    })
  }
  return impossibleTriangle(markIds, distances)
}

function leastTaped(markIds: readonly string[], distances: readonly MarkDistance[]): string {
  const degree = (id: string): number => distances.filter((d) => d.a === id || d.b === id).length
  return [...markIds].sort((p, q) => degree(p) - degree(q))[0] ?? ''
}

/** Three taped sides of which one is far longer than the two others cannot close; a little is left to the solving. */
function impossibleTriangle(markIds: readonly string[], distances: readonly MarkDistance[]): Refusal | null {
  const between = (p: string, q: string): number | undefined =>
    distances.find((d) => (d.a === p && d.b === q) || (d.a === q && d.b === p))?.lengthMm
  for (const d of distances) {
    for (const via of markIds) {
      const there = between(d.a, via)
      const back = between(via, d.b)
      if (there === undefined || back === undefined) continue
      if (d.lengthMm > (there + back) * 1.1 + 20) return refuse('distances-impossible', { distanceId: d.id })
    }
  }
  return null
}

function seedPoints({ markIds, seedPositions }: MarkLayoutInput): readonly Point[] | null {
  if (!seedPositions) return null
  const points = markIds.map((id) => seedPositions.find((s) => s.id === id)?.at)
  return points.every((p) => p !== undefined) ? points : null
}

const lengthBetween = (points: readonly Point[], a: number, b: number): number => {
  const p = points[a] ?? [0, 0]
  const q = points[b] ?? [0, 0]
  return Math.hypot(p[0] - q[0], p[1] - q[1])
}

/** Free numbers are all coordinates but the first mark's two and the second's y. */
function solveFrom(
  start: readonly Point[],
  sides: readonly Side[],
): { points: readonly Point[]; cost: number } {
  const scale = Math.max(...sides.map((s) => s.lengthMm))
  const unfold = (p: readonly number[]): Point[] =>
    start.map((_, i): Point =>
      i === 0 ? [0, 0] : i === 1 ? [p[0] ?? 0, 0] : [p[2 * i - 3] ?? 0, p[2 * i - 2] ?? 0],
    )
  const first = start[0] ?? [0, 0]
  const second = start[1] ?? [1, 0]
  const angle = Math.atan2(second[1] - first[1], second[0] - first[0])
  const turned = start.map((p): Point => {
    const [x, y] = [p[0] - first[0], p[1] - first[1]]
    return [x * Math.cos(angle) + y * Math.sin(angle), y * Math.cos(angle) - x * Math.sin(angle)]
  })
  const answer = levenbergMarquardt({
    start: [turned[1]?.[0] ?? 0, ...turned.slice(2).flat()],
    steps: Array.from({ length: 2 * start.length - 3 }, () => scale * 1e-5),
    residuals: (p) => {
      const points = unfold(p)
      return sides.map((s) => lengthBetween(points, s.a, s.b) - s.lengthMm)
    },
  })
  return { points: unfold(answer.parameters), cost: answer.cost }
}

function looseMark(input: MarkLayoutInput, sides: readonly Side[], points: readonly Point[]): Refusal | null {
  const rows = sides.map((s) => {
    const row = Array.from({ length: 2 * points.length }, () => 0)
    const a = points[s.a] ?? [0, 0]
    const b = points[s.b] ?? [0, 0]
    const length = Math.max(Math.hypot(a[0] - b[0], a[1] - b[1]), 1e-9)
    row[2 * s.a] = (a[0] - b[0]) / length
    row[2 * s.a + 1] = (a[1] - b[1]) / length
    row[2 * s.b] = (b[0] - a[0]) / length
    row[2 * s.b + 1] = (b[1] - a[1]) / length
    return row
  })
  const needed = 2 * points.length - 3
  const weakest = singularValues(matrixFromRows(rows)).values[needed - 1] ?? 0
  if (weakest > LOOSE_SINGULAR_VALUE) return null
  const markId = leastTaped(input.markIds, input.distances)
  return refuse('distances-too-few', { needed, given: sides.length, markId })
}

/** How many triples of marks turn the other way round than their seeds; nearly straight triples do not count. */
export function wrongTriples(points: readonly Point[], seeds: readonly Point[]): number {
  let wrong = 0
  for (let i = 0; i < points.length; i++) {
    for (let j = i + 1; j < points.length; j++) {
      for (let k = j + 1; k < points.length; k++) {
        const solved = turnOf(points[i], points[j], points[k])
        const seen = turnOf(seeds[i], seeds[j], seeds[k])
        if (Math.min(Math.abs(solved), Math.abs(seen)) > FLAT_TRIPLE && solved * seen < 0) wrong += 1
      }
    }
  }
  return wrong
}

/** Sine-like measure of a triple's turn: signed double area over the longest side squared. */
function turnOf(a: Point = [0, 0], b: Point = [0, 0], c: Point = [0, 0]): number {
  const doubleArea = (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
  const longest = Math.max((b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2, (c[0] - a[0]) ** 2 + (c[1] - a[1]) ** 2)
  return doubleArea / Math.max(longest, (c[0] - b[0]) ** 2 + (c[1] - b[1]) ** 2, 1e-300)
}
