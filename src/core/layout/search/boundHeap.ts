export interface Bounded {
  readonly bound: number
}

/** What is still to be looked at, the most promising first. */
export class BoundHeap<N extends Bounded> {
  readonly #nodes: N[] = []

  /** The greatest bound that is left; −Infinity when nothing is. */
  get bound(): number {
    return this.#nodes[0]?.bound ?? -Infinity
  }

  get size(): number {
    return this.#nodes.length
  }

  push(node: N): void {
    const nodes = this.#nodes
    let at = nodes.push(node) - 1
    while (at > 0) {
      const parentAt = (at - 1) >> 1
      const parent = nodes[parentAt]
      if (parent === undefined || parent.bound >= node.bound) break
      nodes[at] = parent
      at = parentAt
    }
    nodes[at] = node
  }

  pop(): N | undefined {
    const top = this.#nodes[0]
    const last = this.#nodes.pop()
    if (last !== undefined && this.#nodes.length > 0) this.#sink(last)
    return top
  }

  #sink(node: N): void {
    const nodes = this.#nodes
    let at = 0
    for (let childAt = 1; childAt < nodes.length; childAt = 2 * at + 1) {
      const left = nodes[childAt]
      const right = nodes[childAt + 1]
      const isRight = right !== undefined && left !== undefined && right.bound > left.bound
      const child = isRight ? right : left
      if (child === undefined || child.bound <= node.bound) break
      nodes[at] = child
      at = isRight ? childAt + 1 : childAt
    }
    nodes[at] = node
  }
}
