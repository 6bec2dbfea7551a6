import { BucketQueue } from './bucketQueue'

/** A rectangle of places of a picture. */
export interface SearchWindow {
  readonly x: number
  readonly y: number
  readonly wide: number
  readonly high: number
}

/** What it costs to be at a place, and which way the edge runs there, for a picture row by row. */
export interface WalkCosts {
  readonly level: { readonly widthPx: number }
  /** In hundredths, 0 to 57. */
  readonly place: Uint8Array
  /** Unit vector along the edge, in 127ths; zero where there is none. */
  readonly alongX: Int8Array
  readonly alongY: Int8Array
  /** How a place looks, and what is added to its cost for looking so, in hundredths, at most 20. */
  readonly look: Uint8Array
  readonly unlike: Uint8Array
  /** Makes sure that the costs of a place and its neighbours are known. */
  ready(x: number, y: number): void
}

/** Right, left, down, up, then the diagonals. */
const STEP_X = [1, -1, 0, 0, 1, -1, 1, -1] as const
const STEP_Y = [0, 0, 1, -1, 1, -1, -1, 1] as const

/** In hundredths, for a step square to the edge at both ends (Mortensen and Barrett, SIGGRAPH 1995). */
const WEIGHT_DIRECTION = 43
const MOST_STEP_COST = 180
const ANGLES = 128

/** Cost of an angle between edge and step, by its cosine in 127ths plus 127. */
const angleCosts = (): Float64Array =>
  Float64Array.from({ length: 2 * ANGLES }, (_, at) => {
    const cosine = Math.max(-1, Math.min(1, (at - 127) / 127))
    return ((WEIGHT_DIRECTION * 2) / (3 * Math.PI)) * Math.acos(cosine)
  })

const BLOCKED = 1
const START = 9

/**
 * Least-cost ways from one place to all others of a window (Dijkstra's algorithm with buckets of whole-number costs),
 * worked out only as far as was asked for.
 * Cost of a step: (place + 0.43 · (2/3π) · (acos of the edges' directions at both ends against the step)) · length.
 */
export class LeastCostSearch {
  readonly #costs: WalkCosts
  readonly #window: SearchWindow
  /** Width of the arrays: the window with a blocked rim, so that no step asks whether it leaves. */
  readonly #wide: number
  readonly #queue = new BucketQueue(MOST_STEP_COST)
  /** Cost plus one; zero: not reached. */
  readonly #reached: Int32Array
  /** The step that led here, plus one. */
  readonly #cameBy: Uint8Array
  readonly #done: Uint8Array
  readonly #angles = angleCosts()
  readonly #unitX = Float64Array.from(STEP_X, (x, k) => (k < 4 ? x : x * Math.SQRT1_2))
  readonly #unitY = Float64Array.from(STEP_Y, (y, k) => (k < 4 ? y : y * Math.SQRT1_2))
  readonly #local: Int32Array
  readonly #global: Int32Array

  /** @param rooms the parts of the window that may be walked; all of it when null */
  constructor(
    costs: WalkCosts,
    window: SearchWindow,
    [startX, startY]: readonly [number, number],
    rooms: readonly SearchWindow[] | null = null,
  ) {
    this.#costs = costs
    this.#window = window
    this.#wide = window.wide + 2
    const size = this.#wide * (window.high + 2)
    this.#reached = new Int32Array(size)
    this.#cameBy = new Uint8Array(size)
    this.#done = new Uint8Array(size)
    if (rooms === null) this.#blockRim()
    else this.#blockAllBut(rooms)
    this.#local = Int32Array.from(STEP_X, (x, k) => x + (STEP_Y[k] ?? 0) * this.#wide)
    this.#global = Int32Array.from(STEP_X, (x, k) => x + (STEP_Y[k] ?? 0) * costs.level.widthPx)
    const start = this.#indexOf(startX, startY)
    this.#reached[start] = 1
    this.#cameBy[start] = START
    this.#queue.put(start, 1)
  }

  /** @returns the places from the start to this one, both included, or null when it cannot be reached */
  wayTo(x: number, y: number): readonly (readonly [number, number])[] | null {
    const { x: left, y: top, wide, high } = this.#window
    if (x < left || y < top || x >= left + wide || y >= top + high) return null
    const goal = this.#indexOf(x, y)
    if (!this.#search(goal)) return null
    const way: (readonly [number, number])[] = []
    for (let at = goal; ;) {
      way.push([(at % this.#wide) - 1 + left, Math.floor(at / this.#wide) - 1 + top])
      const came = this.#cameBy[at] ?? START
      if (came === START) return way.reverse()
      at -= this.#local[came - 1] ?? 0
    }
  }

  /** Cost, in hundredths, of the way to a place that `wayTo` reached. */
  costTo(x: number, y: number): number {
    return (this.#reached[this.#indexOf(x, y)] ?? 0) - 1
  }

  #indexOf(x: number, y: number): number {
    return (y - this.#window.y + 1) * this.#wide + x - this.#window.x + 1
  }

  #blockRim(): void {
    const { wide, high } = this.#window
    const done = this.#done
    done.fill(BLOCKED, 0, this.#wide)
    done.fill(BLOCKED, this.#wide * (high + 1))
    for (let row = 1; row <= high; row++) {
      const from = row * this.#wide
      done[from] = BLOCKED
      done[from + wide + 1] = BLOCKED
    }
  }

  #blockAllBut(rooms: readonly SearchWindow[]): void {
    const { x: left, y: top, wide, high } = this.#window
    this.#done.fill(BLOCKED)
    for (const room of rooms) {
      const from = Math.max(left, room.x)
      const length = Math.min(left + wide, room.x + room.wide) - from
      const last = Math.min(top + high, room.y + room.high)
      for (let y = Math.max(top, room.y); y < last && length > 0; y++) {
        const at = this.#indexOf(from, y)
        this.#done.fill(0, at, at + length)
      }
    }
  }

  #search(goal: number): boolean {
    // The goal is done once it was taken out, or blocked from the beginning: then nothing has come by it.
    while (this.#done[goal] === 0) {
      const at = this.#queue.take()
      if (at < 0) return false
      if (this.#done[at] === 1) continue
      this.#done[at] = 1
      this.#spread(at)
    }
    return this.#cameBy[goal] !== 0
  }

  #spread(at: number): void {
    const { x: left, y: top } = this.#window
    const x = (at % this.#wide) - 1 + left
    const y = Math.floor(at / this.#wide) - 1 + top
    const costs = this.#costs
    costs.ready(x, y)
    const from = y * costs.level.widthPx + x
    const alongX = costs.alongX[from] ?? 0
    const alongY = costs.alongY[from] ?? 0
    for (let k = 0; k < 8; k++) {
      const to = at + (this.#local[k] ?? 0)
      if (this.#done[to] === 0) this.#reach(at, to, k, from + (this.#global[k] ?? 0), alongX, alongY)
    }
  }

  #reach(at: number, to: number, k: number, place: number, alongX: number, alongY: number): void {
    const length = k < 4 ? 1 : Math.SQRT2
    const cost =
      this.#numberAt(at) + Math.round((this.#costOf(place) + this.#turn(k, place, alongX, alongY)) * length)
    const known = this.#numberAt(to)
    if (known !== 0 && cost >= known) return
    this.#reached[to] = cost
    this.#cameBy[to] = k + 1
    this.#queue.put(to, cost)
  }

  #numberAt(at: number): number {
    return this.#reached[at] ?? 0
  }

  #costOf(place: number): number {
    const { look, unlike } = this.#costs
    return (this.#costs.place[place] ?? 0) + (unlike[look[place] ?? 0] ?? 0)
  }

  /** Cost of the angles that a step makes with the edges at both its ends. */
  #turn(k: number, place: number, alongX: number, alongY: number): number {
    const dx = this.#unitX[k] ?? 0
    const dy = this.#unitY[k] ?? 0
    const first = alongX * dx + alongY * dy
    const second = (this.#costs.alongX[place] ?? 0) * dx + (this.#costs.alongY[place] ?? 0) * dy
    // An edge has no sense of its own: the one at the beginning is taken to run along the step.
    return this.#angle(Math.abs(first)) + this.#angle(first < 0 ? -second : second)
  }

  #angle(cosine127: number): number {
    return this.#angles[(cosine127 + 127.5) | 0] ?? 0
  }
}
