import { EVD, Matrix } from 'ml-matrix'
import { describe, expect, it } from 'vitest'
import type { Point } from '../geometry'
import { type MarkDistance, markPositionsFromDistances } from './markLayout'

const MARKS: readonly Point[] = [
  [-900, 330],
  [880, 365],
  [905, -330],
  [-880, -300],
  [30, 20],
]

const idsOf = (points: readonly Point[]): string[] => points.map((_, i) => `m${String(i + 1)}`)

const everyDistance = (points: readonly Point[]): MarkDistance[] =>
  points.flatMap((p, i) =>
    points.slice(i + 1).map((q, n) => ({
      id: `d${String(i + 1)}${String(i + n + 2)}`,
      a: `m${String(i + 1)}`,
      b: `m${String(i + n + 2)}`,
      lengthMm: Math.hypot(p[0] - q[0], p[1] - q[1]),
    })),
  )

const seedsOf = (points: readonly Point[]): { id: string; at: Point }[] =>
  points.map(([x, y], i) => ({ id: `m${String(i + 1)}`, at: [500 + x * 0.4 - y * 0.1, 300 + y * 0.3] }))

/** Worst difference between solved and true places, after the solved ones are laid onto the true ones. */
function worstMisfit(solved: readonly Point[], truth: readonly Point[]): number {
  const middle = (points: readonly Point[], c: 0 | 1): number =>
    points.reduce((sum, p) => sum + p[c], 0) / points.length
  const [sx, sy, tx, ty] = [middle(solved, 0), middle(solved, 1), middle(truth, 0), middle(truth, 1)]
  let [dot, cross] = [0, 0]
  solved.forEach((p, i) => {
    const q = truth[i] ?? [0, 0]
    dot += (p[0] - sx) * (q[0] - tx) + (p[1] - sy) * (q[1] - ty)
    cross += (p[0] - sx) * (q[1] - ty) - (p[1] - sy) * (q[0] - tx)
  })
  const angle = Math.atan2(cross, dot)
  return Math.max(
    ...solved.map((p, i) => {
      const q = truth[i] ?? [0, 0]
      const x = (p[0] - sx) * Math.cos(angle) - (p[1] - sy) * Math.sin(angle) + tx
      const y = (p[0] - sx) * Math.sin(angle) + (p[1] - sy) * Math.cos(angle) + ty
      return Math.hypot(x - q[0], y - q[1])
    }),
  )
}

describe('markPositionsFromDistances', () => {
  it('PHO-5 finds marks from all distances between them, turned as they are seen', () => {
    for (const count of [4, 5]) {
      const truth = MARKS.slice(0, count)
      const answer = markPositionsFromDistances({
        markIds: idsOf(truth),
        distances: everyDistance(truth),
        seedPositions: seedsOf(truth),
      })
      if (!answer.ok) throw new Error(answer.problem.code)
      expect(
        worstMisfit(
          answer.value.positions.map((p) => p.at),
          truth,
        ),
      ).toBeLessThan(1e-6)
      expect(answer.value.redundancy).toBe(everyDistance(truth).length - (2 * count - 3))
    }
  })

  it('PHO-5 finds four marks from five distances: the photo tells on which side the fold lies', () => {
    const truth = MARKS.slice(0, 4)
    for (const left of everyDistance(truth)) {
      const answer = markPositionsFromDistances({
        markIds: idsOf(truth),
        distances: everyDistance(truth).filter((d) => d.id !== left.id),
        seedPositions: seedsOf(truth),
      })
      if (!answer.ok) throw new Error(answer.problem.code)
      expect(
        worstMisfit(
          answer.value.positions.map((p) => p.at),
          truth,
        ),
      ).toBeLessThan(1e-6)
    }
  })

  it('PHO-5 agrees with classical scaling (eigenvectors by ml-matrix) on exact distances', () => {
    const truth = MARKS
    const square = truth.map((p) => truth.map((q) => (p[0] - q[0]) ** 2 + (p[1] - q[1]) ** 2))
    const n = truth.length
    const rowMean = square.map((row) => row.reduce((a, b) => a + b, 0) / n)
    const mean = rowMean.reduce((a, b) => a + b, 0) / n
    const gram = square.map((row, i) =>
      row.map((v, j) => -0.5 * (v - (rowMean[i] ?? 0) - (rowMean[j] ?? 0) + mean)),
    )
    const { realEigenvalues, eigenvectorMatrix } = new EVD(new Matrix(gram), { assumeSymmetric: true })
    const order = realEigenvalues.map((value, i) => ({ value, i })).sort((a, b) => b.value - a.value)
    const [first, second] = [order[0] ?? { value: 0, i: 0 }, order[1] ?? { value: 0, i: 0 }]
    const theirs = truth.map((_, k): Point => [
      Math.sqrt(first.value) * eigenvectorMatrix.get(k, first.i),
      Math.sqrt(second.value) * eigenvectorMatrix.get(k, second.i),
    ])
    const ours = markPositionsFromDistances({ markIds: idsOf(truth), distances: everyDistance(truth) })
    if (!ours.ok) throw new Error(ours.problem.code)
    const places = ours.value.positions.map((p) => p.at)
    const mirrored = places.map(([x, y]): Point => [x, -y])
    expect(Math.min(worstMisfit(places, theirs), worstMisfit(mirrored, theirs))).toBeLessThan(1e-6)
  })

  it('PHO-6 spreads a misread tape over the residuals', () => {
    const truth = MARKS.slice(0, 4)
    const distances = everyDistance(truth).map((d) =>
      d.id === 'd13' ? { ...d, lengthMm: d.lengthMm + 25 } : d,
    )
    const answer = markPositionsFromDistances({
      markIds: idsOf(truth),
      distances,
      seedPositions: seedsOf(truth),
    })
    if (!answer.ok) throw new Error(answer.problem.code)
    expect(answer.value.rmsResidualMm).toBeGreaterThan(2)
    expect(answer.value.residuals).toHaveLength(6)
  })

  it('PHO-6 says which mark is loose when distances are missing', () => {
    const truth = MARKS.slice(0, 4)
    const distances = everyDistance(truth).filter((d) => d.id !== 'd14' && d.id !== 'd24')
    const answer = markPositionsFromDistances({ markIds: idsOf(truth), distances })
    expect(answer).toEqual({
      ok: false,
      problem: { code: 'distances-too-few', values: { needed: 5, given: 4, markId: 'm4' } },
    })
  })

  it('PHO-6 refuses a side longer than the way round it, unknown marks, and lengths of nothing', () => {
    const truth = MARKS.slice(0, 4)
    const change = (id: string, to: Partial<MarkDistance>): string => {
      const distances = everyDistance(truth).map((d) => (d.id === id ? { ...d, ...to } : d))
      const answer = markPositionsFromDistances({ markIds: idsOf(truth), distances })
      return answer.ok ? 'ok' : answer.problem.code
    }
    expect(change('d13', { lengthMm: 4000 })).toBe('distances-impossible')
    expect(change('d13', { b: 'm9' })).toBe('distance-unknown-mark')
    expect(change('d13', { lengthMm: 0 })).toBe('distance-not-positive')
    const two = markPositionsFromDistances({ markIds: ['m1', 'm2'], distances: [] })
    expect(two.ok ? 'ok' : two.problem.code).toBe('marks-too-few')
  })
})
