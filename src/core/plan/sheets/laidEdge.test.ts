import { expect, it } from 'vitest'
import { tablePoint, type TablePoint } from '../../geometry'
import { laidEdge } from './laidEdge'

const ring = (points: readonly (readonly [number, number])[]): readonly TablePoint[] =>
  points.map(([x, y]) => tablePoint(x, y))

const BLANK = ring([
  [0, 0],
  [2000, 0],
  [2000, 900],
  [0, 900],
])

it('SHT-10 lays a piece by its sawn edge, as far as that lies in the blank', () => {
  // A sawn edge from (-100, 60) to (800, 30), and a wavy edge over it in steps of 200.
  const outer = ring([
    [-100, 60],
    [0, -20],
    [200, -30],
    [400, -10],
    [600, -25],
    [800, 30],
  ])
  const edge = laidEdge({ whole: { outer, holes: [] } }, BLANK)
  // By hand: at x = 0 the sawn edge is at 60 − 100 / 900 × 30 = 56.667.
  expect(edge?.from[0]).toBeCloseTo(0, 9)
  expect(edge?.from[1]).toBeCloseTo(56.6667, 3)
  expect(edge?.to).toEqual([800, 30])
  expect(edge?.lengthMm).toBeCloseTo(Math.hypot(800, 26.6667), 3)
})

it('SHT-10 has no edge to lay a piece by that lies beside the blank', () => {
  const outer = ring([
    [3000, 0],
    [3100, 0],
    [3100, 50],
  ])
  expect(laidEdge({ whole: { outer, holes: [] } }, BLANK)).toBeNull()
})
