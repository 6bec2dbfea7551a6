import { createRequire } from 'node:module'
import { Matrix, SingularValueDecomposition } from 'ml-matrix'
import { beforeAll, describe, expect, it } from 'vitest'
import checks from '../../../tests/check-values/photo.json'
import type { Point } from '../geometry'
import { applyHomography, homographyFromPoints, invertHomography, type PointPair } from './homography'

const solved = (pairs: readonly PointPair[]): readonly number[] => {
  const answer = homographyFromPoints(pairs)
  if (!answer.ok) throw new Error(answer.problem.code)
  return answer.value
}
const pairsOf = (from: readonly (readonly number[])[], to: readonly (readonly number[])[]): PointPair[] =>
  from.map((f, i) => ({ from: [f[0] ?? 0, f[1] ?? 0], to: [to[i]?.[0] ?? 0, to[i]?.[1] ?? 0] }))

/** Repeatable numbers in [0, 1): the minimal standard generator. */
function numbers(seed: number): () => number {
  let state = seed
  return () => (state = (state * 16807) % 2147483647) / 2147483647
}

function randomPairs(count: number, seed: number): PointPair[] {
  const next = numbers(seed)
  const h = [
    1 + next(),
    next() - 0.5,
    900 * next(),
    next() - 0.5,
    1 + next(),
    900 * next(),
    2e-4 * next(),
    2e-4 * next(),
  ]
  return Array.from({ length: count }, (_, i) => {
    const corner = [
      [0, 0],
      [2000, 100],
      [1900, 1300],
      [50, 1200],
    ][i % 4] ?? [0, 0]
    const from: Point = [(corner[0] ?? 0) + 400 * next(), (corner[1] ?? 0) + 400 * next()]
    const w = (h[6] ?? 0) * from[0] + (h[7] ?? 0) * from[1] + 1
    const to: Point = [
      ((h[0] ?? 0) * from[0] + (h[1] ?? 0) * from[1] + (h[2] ?? 0)) / w,
      ((h[3] ?? 0) * from[0] + (h[4] ?? 0) * from[1] + (h[5] ?? 0)) / w,
    ]
    return { from, to }
  })
}

/** The textbook's 2n × 9 system, unnormalised in name only: the points are small already. By ml-matrix. */
function oracleBySvd(pairs: readonly PointPair[]): number[] {
  const k = 1 / 1000
  const rows = pairs.flatMap(({ from, to }) => {
    const [x, y, u, v] = [from[0] * k, from[1] * k, to[0] * k, to[1] * k]
    return [
      [x, y, 1, 0, 0, 0, -u * x, -u * y, -u],
      [0, 0, 0, x, y, 1, -v * x, -v * y, -v],
    ]
  })
  while (rows.length < 9) rows.push(Array.from({ length: 9 }, () => 0))
  const h = new SingularValueDecomposition(new Matrix(rows), {
    autoTranspose: false,
  }).rightSingularVectors.getColumn(8)
  const at = (i: number): number => h[i] ?? 0
  const unscaled = [at(0), at(1), at(2) / k, at(3), at(4), at(5) / k, at(6) * k, at(7) * k, at(8)]
  return unscaled.map((value) => value / at(8))
}

describe('homographyFromPoints', () => {
  for (const check of checks.homographies) {
    it(`PHO-1 gives the published map: ${check.id}`, () => {
      const h = solved(pairsOf(check.from, check.to))
      check.h.forEach((value, i) => {
        expect(Math.abs((h[i] ?? 0) - value)).toBeLessThan(check.relTolerance * Math.max(1, Math.abs(value)))
      })
      for (const [from, to] of check.images) {
        const got = applyHomography(h as never, [from?.[0] ?? 0, from?.[1] ?? 0])
        expect(got[0]).toBeCloseTo(to?.[0] ?? 0, 9)
        expect(got[1]).toBeCloseTo(to?.[1] ?? 0, 9)
      }
    })
  }

  it('PHO-1 is exact on exact data to 1e-9, with four points and with more', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const pairs = randomPairs(4 + (seed % 9), seed)
      const answer = homographyFromPoints(pairs)
      if (!answer.ok) throw new Error(answer.problem.code)
      for (const p of pairs) {
        const q = applyHomography(answer.value, p.from)
        expect(Math.hypot(q[0] - p.to[0], q[1] - p.to[1])).toBeLessThan(1e-9 * 3000)
      }
    }
  })

  it('PHO-1 agrees with the singular value decomposition of ml-matrix to 1e-6 on exact data', () => {
    for (let seed = 100; seed < 130; seed++) {
      const pairs = randomPairs(4 + (seed % 5), seed)
      const ours = solved(pairs)
      oracleBySvd(pairs).forEach((value, i) => {
        expect(Math.abs((ours[i] ?? 0) - value)).toBeLessThan(1e-6 * Math.max(1e-3, Math.abs(value)))
      })
    }
  })

  it('PHO-1 followed by its inverse returns every point', () => {
    const answer = homographyFromPoints(randomPairs(4, 7))
    if (!answer.ok) throw new Error(answer.problem.code)
    const back = invertHomography(answer.value)
    for (const p of [
      [3, 4],
      [1500, 900],
      [-200, 2000],
    ] as const) {
      const q = applyHomography(back, applyHomography(answer.value, p))
      expect(Math.hypot(q[0] - p[0], q[1] - p[1])).toBeLessThan(1e-8)
    }
  })

  it('PHO-1 does not depend on the order of the pairs', () => {
    const pairs = randomPairs(6, 11)
    const straight = solved(pairs)
    solved([...pairs].reverse()).forEach((value, i) => expect(value).toBeCloseTo(straight[i] ?? 0, 8))
  })

  it('PHO-1 carries click errors to a span as computed outside this project, to first order', () => {
    const check = checks.spanUncertainty
    const { widthMm: w, heightMm: h } = check
    const lengthMm = (px: readonly number[]): number => {
      const at = (i: number): Point => [px[2 * i] ?? 0, px[2 * i + 1] ?? 0]
      const toMm = solved(
        pairsOf(
          [at(0), at(1), at(2), at(3)],
          [
            [0, 0],
            [w, 0],
            [w, h],
            [0, h],
          ],
        ),
      )
      const [p, q] = [applyHomography(toMm as never, at(4)), applyHomography(toMm as never, at(5))]
      return Math.hypot(p[0] - q[0], p[1] - q[1])
    }
    const px = [...check.marksPx, ...check.spanPx].flat()
    const squares = px.map(
      (value, i) => ((lengthMm(px.with(i, value + 0.05)) - lengthMm(px.with(i, value - 0.05))) / 0.1) ** 2,
    )
    const sd = (from: number, to: number): number =>
      Math.sqrt(squares.slice(from, to).reduce((a, b) => a + b, 0))
    expect(lengthMm(px)).toBeCloseTo(check.lengthMm, 4)
    expect(sd(0, 12)).toBeCloseTo(check.sdMm, 3)
    expect(sd(8, 12)).toBeCloseTo(check.sdFromPointsMm, 3)
    expect(sd(0, 8)).toBeCloseTo(check.sdFromMarksMm, 3)
  })

  it('PHO-2 refuses three points on one line, by index', () => {
    const answer = homographyFromPoints(
      pairsOf(
        [
          [0, 0],
          [1000, 500],
          [2000, 1000],
          [0, 900],
        ],
        [
          [0, 0],
          [10, 0],
          [20, 20],
          [0, 10],
        ],
      ),
    )
    expect(answer).toEqual({
      ok: false,
      problem: { code: 'points-on-one-line', values: { first: 0, second: 1, third: 2 } },
    })
  })

  it('PHO-2 refuses fewer than four points, points that are not numbers, and many points on one line', () => {
    const few = homographyFromPoints(randomPairs(3, 1))
    expect(few.ok ? null : few.problem).toEqual({ code: 'points-too-few', values: { count: 3 } })
    const broken = homographyFromPoints([...randomPairs(3, 1), { from: [Number.NaN, 0], to: [0, 0] }])
    expect(broken.ok ? null : broken.problem.code).toBe('points-not-finite')
    const line = Array.from({ length: 7 }, (_, i): PointPair => ({ from: [i * 100, i * 50], to: [i * 3, i] }))
    const straight = homographyFromPoints(line)
    expect(straight.ok ? null : straight.problem.code).toBe('points-on-one-line')
  })
})

interface VisionLibrary {
  readonly CV_64FC2: number
  readonly CV_32FC2: number
  matFromArray(rows: number, cols: number, type: number, values: readonly number[]): { delete(): void }
  findHomography(from: unknown, to: unknown): { readonly data64F: Float64Array; delete(): void }
}

describe('homographyFromPoints against a vision library', () => {
  let cv: VisionLibrary
  beforeAll(async () => {
    // The package exports a promise of its module.
    cv = await (createRequire(import.meta.url)('@techstark/opencv-js') as Promise<VisionLibrary>)
  }, 60_000)

  it('PHO-1 agrees with findHomography to 1e-6 on exact data', () => {
    for (let seed = 200; seed < 220; seed++) {
      const pairs = randomPairs(4 + (seed % 6), seed)
      const from = cv.matFromArray(
        pairs.length,
        1,
        cv.CV_64FC2,
        pairs.flatMap((p) => [...p.from]),
      )
      const to = cv.matFromArray(
        pairs.length,
        1,
        cv.CV_64FC2,
        pairs.flatMap((p) => [...p.to]),
      )
      const theirs = cv.findHomography(from, to)
      const ours = solved(pairs)
      for (const p of pairs) {
        const a = applyHomography(ours as never, p.from)
        const b = applyHomography(Array.from(theirs.data64F) as never, p.from)
        expect(Math.hypot(a[0] - b[0], a[1] - b[1])).toBeLessThan(1e-6 * 3000)
      }
      for (const m of [from, to, theirs]) m.delete()
    }
  })
})
