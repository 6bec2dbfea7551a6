import { describe, expect, it } from 'vitest'
import { paintedSlab } from '../../../tests/support/paintedSlab'
import { pointToRingDistanceMm, type PxPoint } from '../geometry'
import { EdgeFollower } from './edgeFollower'

const { picture, edgePx } = paintedSlab()

/** A place of the painted slab's upper edge. */
const onEdge = (x: number): PxPoint => {
  const place = edgePx[x - 120]
  if (place === undefined) throw new Error('beyond the slab')
  return place
}

const medianMiss = (places: readonly PxPoint[]): number => {
  const misses = places.map((place) => pointToRingDistanceMm(place, edgePx)).toSorted((a, b) => a - b)
  return misses[Math.floor(misses.length / 2)] ?? Infinity
}

describe('EdgeFollower', () => {
  it('TRC-10 clings to a wavy edge from a pin to the pointer, near and far', () => {
    for (const x of [260, 420, 760]) {
      const follower = new EdgeFollower(picture)
      follower.start(onEdge(150))
      const { livePx } = follower.moveTo(onEdge(x))
      expect(livePx[0]).toEqual(onEdge(150))
      expect(livePx.at(-1)).toEqual(onEdge(x))
      expect(medianMiss(livePx)).toBeLessThan(2)
      expect(livePx.length).toBeGreaterThan(x - 150)
    }
  })

  it('TRC-10 draws straight when asked to', () => {
    const follower = new EdgeFollower(picture)
    follower.start(onEdge(150))
    expect(follower.moveTo(onEdge(400), true).livePx).toEqual([onEdge(150), onEdge(400)])
  })

  it('TRC-11 what stays the same while the pointer goes on settles by itself', () => {
    const follower = new EdgeFollower(picture)
    follower.start(onEdge(150))
    for (let x = 160; x <= 700; x += 6) follower.moveTo(onEdge(x))
    const { acceptedPx, livePx } = follower.line()
    expect(acceptedPx.length).toBeGreaterThan(200)
    expect(acceptedPx.at(-1)).toEqual(livePx[0])
    expect(medianMiss(acceptedPx)).toBeLessThan(2)
  })

  it('TRC-11 pins, and takes back stretch by stretch to nothing', () => {
    const follower = new EdgeFollower(picture)
    follower.start(onEdge(150))
    follower.moveTo(onEdge(200))
    const one = follower.pin()
    follower.moveTo(onEdge(250))
    follower.pin()
    expect(follower.takeBack()).toEqual(one)
    expect(follower.takeBack()).toEqual({ acceptedPx: [onEdge(150)], livePx: [onEdge(150)] })
    expect(follower.takeBack()).toEqual({ acceptedPx: [], livePx: [] })
  })
})
