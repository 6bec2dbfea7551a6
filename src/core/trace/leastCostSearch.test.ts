import { describe, expect, it } from 'vitest'
import { LeastCostSearch, type WalkCosts } from './leastCostSearch'

const WIDE = 24
const WINDOW = { x: 0, y: 0, wide: WIDE, high: WIDE }

/** Costs of places by a rule; no edge has a direction, so that every angle costs the same. */
function costsBy(place: (x: number, y: number) => number): WalkCosts {
  const size = WIDE * WIDE
  return {
    level: { widthPx: WIDE },
    place: Uint8Array.from({ length: size }, (_, at) => place(at % WIDE, Math.floor(at / WIDE))),
    alongX: new Int8Array(size),
    alongY: new Int8Array(size),
    look: new Uint8Array(size),
    unlike: new Uint8Array(256),
    ready: () => undefined,
  }
}

const bumpy = (x: number, y: number): number => (x * 37 + y * 91 + x * y * 13) % 58

/** What a way costs when added up step by step, by searching from place to place. */
function costOf(costs: WalkCosts, way: readonly (readonly [number, number])[]): number {
  let sum = 0
  for (const [n, place] of way.entries()) {
    const next = way[n + 1]
    if (next === undefined) break
    const rooms = [place, next].map(([x, y]) => ({ x, y, wide: 1, high: 1 }))
    const step = new LeastCostSearch(costs, WINDOW, place, rooms)
    expect(step.wayTo(next[0], next[1])).toHaveLength(2)
    sum += step.costTo(next[0], next[1])
  }
  return sum
}

describe('LeastCostSearch', () => {
  it('TRC-9 even costs give the octile distance', () => {
    const search = new LeastCostSearch(
      costsBy(() => 10),
      WINDOW,
      [3, 3],
    )
    const way = search.wayTo(20, 9) ?? []
    expect(way).toHaveLength(18)
    const straight = (search.wayTo(4, 3), search.costTo(4, 3))
    const slanted = (search.wayTo(4, 4), search.costTo(4, 4))
    expect(slanted / straight).toBeCloseTo(Math.SQRT2, 1)
    search.wayTo(20, 9)
    expect(search.costTo(20, 9)).toBe(11 * straight + 6 * slanted)
  })

  it('TRC-9 no other way is cheaper, and every beginning of a cheapest way is a cheapest way', () => {
    const costs = costsBy(bumpy)
    const search = new LeastCostSearch(costs, WINDOW, [2, 2])
    const way = search.wayTo(21, 17) ?? []
    expect(costOf(costs, way)).toBe(search.costTo(21, 17))
    for (const [n, [x, y]] of way.entries()) {
      expect(search.wayTo(x, y)).toEqual(way.slice(0, n + 1))
    }
    for (let bend = 3; bend < 22; bend++) {
      const through = new LeastCostSearch(costs, WINDOW, [2, 2])
      const first = through.wayTo(bend, 22 - bend) ?? []
      const rest = new LeastCostSearch(costs, WINDOW, [bend, 22 - bend])
      rest.wayTo(21, 17)
      expect(costOf(costs, first) + rest.costTo(21, 17)).toBeGreaterThanOrEqual(search.costTo(21, 17))
    }
  })

  it('TRC-9 asked place by place it answers as when asked at once', () => {
    const little = new LeastCostSearch(costsBy(bumpy), WINDOW, [12, 12])
    for (let x = 0; x < WIDE; x++) little.wayTo(x, x)
    const atOnce = new LeastCostSearch(costsBy(bumpy), WINDOW, [12, 12])
    expect(little.wayTo(23, 5)).toEqual(atOnce.wayTo(23, 5))
  })

  it('TRC-9 keeps to what is allowed, and says when there is no way', () => {
    const rooms = [
      { x: -5, y: 0, wide: 15, high: WIDE },
      { x: 11, y: 0, wide: WIDE, high: WIDE },
    ]
    const search = new LeastCostSearch(
      costsBy(() => 5),
      WINDOW,
      [2, 2],
      rooms,
    )
    expect(search.wayTo(9, 20)).not.toBeNull()
    expect(search.wayTo(20, 20)).toBeNull()
    expect(search.wayTo(10, 10)).toBeNull()
    expect(search.wayTo(30, 2)).toBeNull()
  })
})
