import { assert, integer, property, record, array } from 'fast-check'
import { describe, expect, it } from 'vitest'
import { GridCut } from './gridCut'

const OFFSETS = [
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
  [1, 1],
  [-1, -1],
  [1, -1],
  [-1, 1],
] as const

interface Grid {
  readonly wide: number
  readonly high: number
  readonly weights: readonly number[]
  readonly pulls: readonly number[]
}

function graphOf({ wide, high, weights, pulls }: Grid) {
  const nodeCount = wide * high
  const neighbours = new Int32Array(nodeCount * 8).fill(-1)
  const capacities = new Float32Array(nodeCount * 8)
  for (let n = 0; n < nodeCount; n++) {
    for (const [k, [dx, dy]] of OFFSETS.entries()) {
      const x = (n % wide) + dx
      const y = Math.floor(n / wide) + dy
      if (x < 0 || y < 0 || x >= wide || y >= high) continue
      const other = y * wide + x
      neighbours[n * 8 + k] = other
      capacities[n * 8 + k] = weights[(Math.min(n, other) * 7 + Math.max(n, other) * 3) % weights.length] ?? 0
    }
  }
  return { nodeCount, neighbours, capacities, terminals: Float32Array.from(pulls.slice(0, nodeCount)) }
}

type Graph = ReturnType<typeof graphOf>

/** What it costs to leave exactly these nodes on the source's side. */
function costOf(
  { nodeCount, neighbours, capacities, terminals }: Graph,
  isSource: (n: number) => boolean,
): number {
  let cost = 0
  for (let n = 0; n < nodeCount; n++) {
    const pull = terminals[n] ?? 0
    if (pull > 0 ? !isSource(n) : isSource(n)) cost += Math.abs(pull)
    for (let k = 0; k < 8; k++) {
      const other = neighbours[n * 8 + k] ?? -1
      if (other >= 0 && isSource(n) && !isSource(other)) cost += capacities[n * 8 + k] ?? 0
    }
  }
  return cost
}

describe('GridCut', () => {
  it('TRC-2 finds a cut as cheap as the cheapest of all', () => {
    const grid = record({
      wide: integer({ min: 1, max: 4 }),
      high: integer({ min: 1, max: 3 }),
      weights: array(integer({ min: 0, max: 9 }), { minLength: 12, maxLength: 12 }),
      pulls: array(integer({ min: -9, max: 9 }), { minLength: 12, maxLength: 12 }),
    })
    const holds = (given: Grid): void => {
      const graph = graphOf(given)
      const cut = new GridCut(graphOf(given))
      while (!cut.step(1));
      let least = Infinity
      for (let set = 0; set < 2 ** graph.nodeCount; set++) {
        least = Math.min(
          least,
          costOf(graph, (n) => ((set >> n) & 1) === 1),
        )
      }
      expect(costOf(graph, (n) => cut.isSource(n))).toBeCloseTo(least, 4)
    }
    assert(property(grid, holds), { seed: 20261, numRuns: 150 })
  })
})
