import { describe, expect, it } from 'vitest'
import { slabPoint } from './point'
import {
  addPoints,
  crossOf,
  dotOf,
  midpoint,
  pointDistanceMm,
  scalePoint,
  subtractPoints,
} from './pointArithmetic'

describe('point arithmetic', () => {
  const a = slabPoint(3, 4)
  const b = slabPoint(-1, 2)

  it('adds, subtracts, scales and halves by coordinate', () => {
    expect(addPoints(a, b)).toEqual([2, 6])
    expect(subtractPoints(a, b)).toEqual([4, 2])
    expect(scalePoint(a, 2)).toEqual([6, 8])
    expect(midpoint(a, b)).toEqual([1, 3])
  })

  it('measures by Pythagoras', () => {
    expect(pointDistanceMm(slabPoint(0, 0), a)).toBe(5)
    expect(pointDistanceMm(a, a)).toBe(0)
  })

  it('the cross product is positive for a turn to the right on screen, y down', () => {
    expect(crossOf([1, 0], [0, 1])).toBe(1)
    expect(crossOf(a, b)).toBe(10)
    expect(dotOf(a, b)).toBe(5)
  })
})
