import { InvariantError } from '../units'

/**
 * A graph over a list of nodes with up to eight neighbours each, as pixels have. `neighbours[n * 8 + k]` is the node
 * that lies k-th of node n, or −1; the arc back is the (k ^ 1)-th of that node.
 */
export interface CutGraph {
  readonly nodeCount: number
  readonly neighbours: Int32Array
  /** Capacity of each arc, ≥ 0; the same both ways when the cost of a cut has no direction. */
  readonly capacities: Float32Array
  /** Above zero: what cutting the node from the source costs; below zero: from the sink. */
  readonly terminals: Float32Array
}

const FREE = 0
const SOURCE = 1
const SINK = 2

const NO_PARENT = -1
const TERMINAL = -2
const ORPHAN = -3

/**
 * Least cut between source and sink, by growing two search trees that are mended instead of rebuilt
 * (Boykov and Kolmogorov, IEEE PAMI 26(9), 2004). The capacities and terminals are used up.
 */
export class GridCut {
  readonly #graph: CutGraph
  readonly #tree: Uint8Array
  readonly #parent: Int32Array
  readonly #stamp: Int32Array
  readonly #depth: Int32Array
  readonly #queued: Uint8Array
  readonly #active: Int32Array
  readonly #orphans: number[] = []
  #head = 0
  #tail = 0
  #time = 0

  constructor(graph: CutGraph) {
    const { nodeCount } = graph
    if (graph.neighbours.length < nodeCount * 8 || graph.terminals.length < nodeCount) {
      throw new InvariantError('a cut graph is too small for its nodes', { nodeCount })
    }
    this.#graph = graph
    this.#tree = new Uint8Array(nodeCount)
    this.#parent = new Int32Array(nodeCount).fill(NO_PARENT)
    this.#stamp = new Int32Array(nodeCount)
    this.#depth = new Int32Array(nodeCount)
    this.#queued = new Uint8Array(nodeCount)
    this.#active = new Int32Array(nodeCount + 1)
    for (let node = 0; node < nodeCount; node++) this.#plant(node)
  }

  /** Works on for about so many augmentations. @returns true once the cut is least */
  step(augmentations: number): boolean {
    for (let done = 0; done < augmentations;) {
      const node = this.#nextActive()
      if (node < 0) return true
      while (this.#tree[node] !== FREE) {
        const arc = this.#grow(node)
        if (arc < 0) break
        this.#augment(arc)
        done++
      }
    }
    return false
  }

  /** Whether a node is left on the source's side. */
  isSource(node: number): boolean {
    return this.#tree[node] === SOURCE
  }

  #plant(node: number): void {
    const capacity = this.#graph.terminals[node] ?? 0
    if (capacity === 0) return
    this.#tree[node] = capacity > 0 ? SOURCE : SINK
    this.#parent[node] = TERMINAL
    this.#depth[node] = 1
    this.#wake(node)
  }

  #wake(node: number): void {
    if (this.#queued[node] === 1) return
    this.#queued[node] = 1
    this.#active[this.#tail] = node
    this.#tail = this.#tail + 1 === this.#active.length ? 0 : this.#tail + 1
  }

  #nextActive(): number {
    while (this.#head !== this.#tail) {
      const node = this.#active[this.#head] ?? 0
      if (this.#queued[node] === 1 && this.#tree[node] !== FREE) {
        // It stays at the head until it has nothing left to grow into.
        return node
      }
      this.#queued[node] = 0
      this.#head = this.#head + 1 === this.#active.length ? 0 : this.#head + 1
    }
    return -1
  }

  #capacityOf(arc: number): number {
    return this.#graph.capacities[arc] ?? 0
  }

  #add(arc: number, amount: number): void {
    this.#graph.capacities[arc] = this.#capacityOf(arc) + amount
  }

  /** @returns an arc from the source's tree to the sink's, or −1 when the node has nothing to grow into */
  #grow(node: number): number {
    const { neighbours } = this.#graph
    const isSource = this.#tree[node] === SOURCE
    for (let k = 0; k < 8; k++) {
      const arc = node * 8 + k
      const other = neighbours[arc] ?? -1
      if (other < 0) continue
      const back = other * 8 + (k ^ 1)
      const forward = isSource ? arc : back
      if (this.#capacityOf(forward) > 0 && this.#meets(node, other, back)) return forward
    }
    this.#queued[node] = 0
    this.#head = this.#head + 1 === this.#active.length ? 0 : this.#head + 1
    return -1
  }

  /** Takes a free neighbour, or a longer way to one of the own tree. @returns whether it belongs to the other tree */
  #meets(node: number, other: number, back: number): boolean {
    const tree = this.#tree[other]
    if (tree === FREE) this.#adopt(other, back, node)
    else if (tree !== this.#tree[node]) return true
    else if ((this.#stamp[other] ?? 0) <= (this.#stamp[node] ?? 0)) this.#shorten(other, back, node)
    return false
  }

  #adopt(node: number, arc: number, parent: number): void {
    this.#tree[node] = this.#tree[parent] ?? FREE
    this.#parent[node] = arc
    this.#stamp[node] = this.#stamp[parent] ?? 0
    this.#depth[node] = (this.#depth[parent] ?? 0) + 1
    this.#wake(node)
  }

  #shorten(node: number, arc: number, parent: number): void {
    if ((this.#depth[node] ?? 0) <= (this.#depth[parent] ?? 0) + 1) return
    this.#parent[node] = arc
    this.#stamp[node] = this.#stamp[parent] ?? 0
    this.#depth[node] = (this.#depth[parent] ?? 0) + 1
  }

  #augment(arc: number): void {
    const from = arc >> 3
    const to = this.#graph.neighbours[arc] ?? 0
    const least = Math.min(this.#capacityOf(arc), this.#room(from, true), this.#room(to, false))
    this.#add(arc, -least)
    this.#add(to * 8 + ((arc & 7) ^ 1), least)
    this.#push(from, least, true)
    this.#push(to, least, false)
    this.#time++
    while (this.#orphans.length > 0) this.#rehome(this.#orphans.pop() ?? 0)
  }

  /** The arc that flow takes between a node and its parent. */
  #flowArc(node: number, parentArc: number, isSource: boolean): number {
    if (!isSource) return parentArc
    return (this.#graph.neighbours[parentArc] ?? 0) * 8 + ((parentArc - node * 8) ^ 1)
  }

  #room(start: number, isSource: boolean): number {
    const { neighbours, terminals } = this.#graph
    let least = Infinity
    let node = start
    for (;;) {
      const arc = this.#parent[node] ?? NO_PARENT
      if (arc === TERMINAL) break
      least = Math.min(least, this.#capacityOf(this.#flowArc(node, arc, isSource)))
      node = neighbours[arc] ?? 0
    }
    return Math.min(least, Math.abs(terminals[node] ?? 0))
  }

  #push(start: number, amount: number, isSource: boolean): void {
    const { neighbours, terminals } = this.#graph
    let node = start
    for (;;) {
      const arc = this.#parent[node] ?? NO_PARENT
      if (arc === TERMINAL) break
      const parent = neighbours[arc] ?? 0
      const along = this.#flowArc(node, arc, isSource)
      this.#add(isSource ? arc : parent * 8 + ((arc & 7) ^ 1), amount)
      this.#add(along, -amount)
      if (this.#capacityOf(along) <= 0) this.#orphan(node)
      node = parent
    }
    const left = Math.abs(terminals[node] ?? 0) - amount
    terminals[node] = isSource ? left : -left
    if (left <= 0) this.#orphan(node)
  }

  #orphan(node: number): void {
    this.#parent[node] = ORPHAN
    this.#orphans.push(node)
  }

  /** Distance to the terminal, or −1 when the way there is broken; marks the way as checked. */
  #depthOf(start: number): number {
    const { neighbours } = this.#graph
    let steps = 0
    let node = start
    for (;;) {
      if (this.#stamp[node] === this.#time) {
        steps += this.#depth[node] ?? 0
        break
      }
      const arc = this.#parent[node] ?? NO_PARENT
      steps++
      if (arc === TERMINAL) {
        this.#stamp[node] = this.#time
        this.#depth[node] = 1
        break
      }
      if (arc < 0) return -1
      node = neighbours[arc] ?? 0
    }
    this.#markWay(start, steps)
    return steps
  }

  #markWay(start: number, steps: number): void {
    let depth = steps
    for (let node = start; this.#stamp[node] !== this.#time;) {
      this.#stamp[node] = this.#time
      this.#depth[node] = depth--
      node = this.#graph.neighbours[this.#parent[node] ?? 0] ?? 0
    }
  }

  #rehome(node: number): void {
    let best = -1
    let bestDepth = Infinity
    for (let arc = node * 8; arc < node * 8 + 8; arc++) {
      const depth = this.#depthThrough(node, arc)
      if (depth <= 0 || depth >= bestDepth) continue
      best = arc
      bestDepth = depth
    }
    if (best < 0) {
      this.#free(node)
      return
    }
    this.#parent[node] = best
    this.#stamp[node] = this.#time
    this.#depth[node] = bestDepth + 1
  }

  /** How far the terminal is from the neighbour that an arc leads to; −1 when no flow comes that way. */
  #depthThrough(node: number, arc: number): number {
    const other = this.#graph.neighbours[arc] ?? -1
    if (other < 0 || this.#tree[other] !== this.#tree[node]) return -1
    const forward = this.#tree[node] === SOURCE ? other * 8 + ((arc & 7) ^ 1) : arc
    return this.#capacityOf(forward) > 0 ? this.#depthOf(other) : -1
  }

  #free(node: number): void {
    const { neighbours } = this.#graph
    const tree = this.#tree[node]
    for (let k = 0; k < 8; k++) {
      const arc = node * 8 + k
      const other = neighbours[arc] ?? -1
      if (other < 0 || this.#tree[other] !== tree) continue
      const back = other * 8 + (k ^ 1)
      if (this.#capacityOf(tree === SOURCE ? back : arc) > 0) this.#wake(other)
      if (this.#parent[other] === back) this.#orphan(other)
    }
    this.#tree[node] = FREE
    this.#parent[node] = NO_PARENT
  }
}
