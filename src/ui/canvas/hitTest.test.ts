import { describe, expect, it } from 'vitest'
import type { Point } from '../../core/geometry'
import { hitEdge, hitHandle, hitPoint, isInRegions } from './hitTest'
import type { Handle } from './tools/toolTypes'

const handle = (id: string, screen: Point): Handle => ({
  id,
  kind: 'mark',
  label: id,
  screen,
  world: screen,
  selection: null,
  grab: null,
})

describe('hitTest', () => {
  const handles = [handle('a', [100, 100]), handle('b', [115, 100])]

  it('reaches 22 px for a finger and 10 px for a mouse', () => {
    expect(hitHandle(handles, [80, 100], 'touch')?.id).toBe('a')
    expect(hitHandle(handles, [77, 100], 'touch')).toBeNull()
    expect(hitHandle(handles, [80, 100], 'mouse')).toBeNull()
    expect(hitHandle(handles, [91, 100], 'mouse')?.id).toBe('a')
  })

  it('takes the nearest of several in reach', () => {
    expect(hitHandle(handles, [109, 100], 'touch')?.id).toBe('b')
    expect(hitHandle(handles, [106, 100], 'touch')?.id).toBe('a')
  })

  it('takes the upper one where two lie on each other, and leaves out what the tool does not use', () => {
    const twins = [handle('below', [50, 50]), handle('above', [50, 50])]
    expect(hitHandle(twins, [52, 50], 'mouse')?.id).toBe('above')
    expect(hitHandle(twins, [52, 50], 'mouse', ({ id }) => id === 'below')?.id).toBe('below')
  })

  it('finds the nearest point of a list', () => {
    const points: readonly Point[] = [
      [0, 0],
      [10, 0],
    ]
    expect(hitPoint(points, [6, 1], 8)).toBe(1)
    expect(hitPoint(points, [5, 20], 8)).toBeNull()
    expect(hitPoint([], [0, 0], 8)).toBeNull()
  })

  it('finds an edge, also the one that closes the ring', () => {
    const square: readonly Point[] = [
      [0, 0],
      [100, 0],
      [100, 100],
      [0, 100],
    ]
    expect(hitEdge(square, [50, 4], 10)).toBe(0)
    expect(hitEdge(square, [3, 50], 10)).toBe(3)
    expect(hitEdge(square, [50, 50], 10)).toBeNull()
    expect(hitEdge([], [50, 50], 10)).toBeNull()
  })

  it('does not take a hole for wood', () => {
    const region = {
      outer: [
        [0, 0],
        [100, 0],
        [100, 100],
        [0, 100],
      ],
      holes: [
        [
          [40, 40],
          [40, 60],
          [60, 60],
          [60, 40],
        ],
      ],
    } as const
    expect(isInRegions([region], [20, 20])).toBe(true)
    expect(isInRegions([region], [50, 50])).toBe(false)
    expect(isInRegions([], [50, 50])).toBe(false)
  })
})
