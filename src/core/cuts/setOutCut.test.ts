import { describe, expect, it } from 'vitest'
import { slabPoint } from '../geometry'
import type { NamedCut } from './pieceTree'
import { setOutCut } from './setOutCut'
import { stationPoint } from './stationPoint'

const marks = [
  { name: 'A', at: slabPoint(0, 0) },
  { name: 'B', at: slabPoint(1800, 0) },
  { name: 'C', at: slabPoint(1800, 600) },
]

const cut: NamedCut = {
  id: 'far',
  line: { from: slabPoint(2000, 300), to: slabPoint(0, 300) },
  kerfMm: 3,
  wasteSide: 'left',
  divides: { kind: 'in-hand' },
}

describe('stationPoint', () => {
  it('CUT-6 tells station, offset and the taped distances from the marks, nearest first', () => {
    const point = stationPoint(slabPoint(300, -400), marks)
    expect([point.alongMm, point.offsetMm]).toEqual([300, -400])
    // 3-4-5 triangle.
    expect(point.fromMarks[0]).toEqual({ markName: 'A', distanceMm: 500 })
    expect(point.fromMarks.map(({ markName }) => markName)).toEqual(['A', 'B', 'C'])
  })
})

describe('setOutCut', () => {
  it('CUT-6 walks the cut so that the station grows, and turns the waste side with it', () => {
    const set = setOutCut(cut, [100, 1900], marks)
    expect([set.from.alongMm, set.to.alongMm]).toEqual([100, 1900])
    expect(set.lengthMm).toBe(1800)
    expect(set.wasteSide).toBe('right')
    expect(set.angleToDatumRad).toBeCloseTo(0, 12)
  })

  it('CUT-7 checks from a mark that is at least 300 mm away, and the tape agrees with the set-out points', () => {
    const { check, to } = setOutCut(cut, [100, 1900], marks)
    expect(check.fromMark).toBe('B')
    // From (1800, 0) to (1900, 300): √(100² + 300²).
    expect(check.distanceMm).toBeCloseTo(Math.sqrt(100_000), 9)
    expect(to.fromMarks.find(({ markName }) => markName === 'B')?.distanceMm).toBe(check.distanceMm)
  })

  it('CUT-7 falls back on the cut’s own length where there are no marks', () => {
    expect(setOutCut(cut, [0, 2000], []).check).toEqual({ fromMark: null, toPoint: 'to', distanceMm: 2000 })
  })
})
