import { type EdgeSet, edgeSubset } from './edgeSet'
import type { ConvexShape, GrowthMeter, ShapeBox } from './growingShape'
import { type BoxBlur, mixedBlur } from './poseBox'
import type { MiddlePose } from './poseWorth'

/** As `numberAt` of edgeSet.ts, here so that it is inlined where modules are served one by one, too. */
const numberAt = (row: Float64Array, index: number): number => row[index] ?? 0

/** How far the poses of a box blur a shape; zero for a single pose. */
interface ShapeBlur {
  /** Sine and cosine of the greatest turn. */
  readonly sin: number
  readonly cos: number
  /** For each side, how far the middle may move along its normal, mm. */
  readonly shiftMm: Float64Array
}

/**
 * How far a convex shape may grow before it reaches edges of wood: the least, over all places on the edges, of the growth at
 * which the shape reaches the place.
 *
 * Method: for a place q that growth is max over sides of (nᵢ·q − startᵢ)/rateᵢ, convex along an edge; its least value on the
 * edge by intersecting tangents (finite, as it is made of straight pieces). Edges that one side alone keeps out are passed
 * over. With a blur each side's value is raised by as much as any pose of the box may raise it.
 */
export class ConvexMeter implements GrowthMeter {
  readonly #shape: ConvexShape
  readonly #still: ShapeBlur
  readonly #kept: Int32Array
  #blur: ShapeBlur
  #side = 0
  #edge = 0
  #least = Infinity
  /** The side that settled the least growth, and how far aside of its middle normal the place lies. */
  #settledBy = 0
  #settledAside = 0

  /** @param mostEdges of the wood */
  constructor(shape: ConvexShape, mostEdges: number) {
    this.#shape = shape
    this.#kept = new Int32Array(mostEdges)
    this.#still = { sin: 0, cos: 1, shiftMm: new Float64Array(shape.count) }
    this.#blur = this.#still
  }

  valueAt(edges: EdgeSet, pose: MiddlePose, floor: number): number {
    return this.#reach(edges, pose, this.#still, floor)
  }

  bound(box: ShapeBox, floor: number): number {
    return this.#reach(box.edges, box, this.#shapeBlur(box), floor)
  }

  /** No pose of the box may grow so far as to take in the middle, which is no wood. */
  boundOutside(box: ShapeBox): number {
    this.#blur = this.#shapeBlur(box)
    const growth = this.#valueAt(0, 0)
    this.#settledBy = this.#side
    this.#settledAside = 0
    return growth
  }

  blurOf(box: ShapeBox): BoxBlur {
    const { nx, ny } = this.#shape
    const [x, y] = [numberAt(nx, this.#settledBy), numberAt(ny, this.#settledBy)]
    const frameRad = box.angleRad - box.frameRad
    const [cos, sin] = [Math.cos(frameRad), Math.sin(frameRad)]
    const seen = {
      along: Math.abs(x * cos - y * sin) * box.halfAlongMm,
      across: Math.abs(x * sin + y * cos) * box.halfAcrossMm,
      turn: (Math.abs(this.#settledAside) + box.halfAlongMm + box.halfAcrossMm) * Math.sin(box.halfAngleRad),
    }
    const armMm = (this.#shape.lengthMm + this.#shape.widthMm) / 4
    const even = { along: box.halfAlongMm, across: box.halfAcrossMm, turn: armMm * box.halfAngleRad }
    return mixedBlur(seen, even)
  }

  #shapeBlur(box: ShapeBox): ShapeBlur {
    const { nx, ny } = this.#shape
    const [sin, cos] = [Math.sin(box.halfAngleRad), Math.cos(box.halfAngleRad)]
    const frameRad = box.angleRad - box.frameRad
    const [frameCos, frameSin] = [Math.cos(frameRad), Math.sin(frameRad)]
    const turnMm = (box.halfAlongMm + box.halfAcrossMm) * sin
    const shiftMm = nx.map((x, i) => {
      const y = numberAt(ny, i)
      const along = Math.abs(x * frameCos - y * frameSin) * box.halfAlongMm
      const across = Math.abs(x * frameSin + y * frameCos) * box.halfAcrossMm
      return along + across + turnMm
    })
    return { sin, cos, shiftMm }
  }

  #reach(edges: EdgeSet, at: MiddlePose, blur: ShapeBlur, floor: number): number {
    this.#blur = blur
    this.#least = Infinity
    const [cos, sin] = [Math.cos(at.angleRad), Math.sin(at.angleRad)]
    const { ax, ay, bx, by, count } = edges
    // What stopped the last pose probably stops this one.
    const first = this.#edge < count ? this.#edge : 0
    for (let k = 0; k < count && this.#least > floor; k += 1) {
      const i = (first + k) % count
      const x1 = numberAt(ax, i) - at.xMm
      const y1 = numberAt(ay, i) - at.yMm
      const x2 = numberAt(bx, i) - at.xMm
      const y2 = numberAt(by, i) - at.yMm
      const before = this.#least
      this.#meet(x1 * cos + y1 * sin, y1 * cos - x1 * sin, x2 * cos + y2 * sin, y2 * cos - x2 * sin)
      if (this.#least < before) this.#edge = i
    }
    return this.#least
  }

  reachable(box: ShapeBox): EdgeSet {
    const { edges } = box
    this.#blur = this.#shapeBlur(box)
    const [cos, sin] = [Math.cos(box.angleRad), Math.sin(box.angleRad)]
    let count = 0
    for (let i = 0; i < edges.count; i += 1) {
      const x1 = numberAt(edges.ax, i) - box.xMm
      const y1 = numberAt(edges.ay, i) - box.yMm
      const x2 = numberAt(edges.bx, i) - box.xMm
      const y2 = numberAt(edges.by, i) - box.yMm
      const [u1, v1, u2, v2] = [
        x1 * cos + y1 * sin,
        y1 * cos - x1 * sin,
        x2 * cos + y2 * sin,
        y2 * cos - x2 * sin,
      ]
      if (this.#isBeyond(u1, v1, u2, v2, box.bound)) continue
      this.#kept[count] = i
      count += 1
    }
    return count < 0.8 * edges.count ? edgeSubset(edges, this.#kept, count) : edges
  }

  /** Does one side keep an edge out until the growth at every pose of the blur? */
  #isBeyond(u1: number, v1: number, u2: number, v2: number, growth: number): boolean {
    const { count, start, rate } = this.#shape
    for (let k = 0; k < count; k += 1) {
      const i = k === 0 ? this.#side : k - 1
      const needed = growth * numberAt(rate, i) + numberAt(start, i)
      if (this.#leastOut(i, u1, v1) > needed && this.#leastOut(i, u2, v2) > needed) {
        this.#side = i
        return true
      }
    }
    return false
  }

  /** How far out of a side a place lies at least, at any pose of the blur; concave, so two ends speak for an edge. */
  #leastOut(i: number, u: number, v: number): number {
    const { nx, ny } = this.#shape
    const { sin, cos, shiftMm } = this.#blur
    const out = numberAt(nx, i) * u + numberAt(ny, i) * v
    const aside = numberAt(nx, i) * v - numberAt(ny, i) * u
    return (out > 0 ? out * cos : out) - Math.abs(aside) * sin - numberAt(shiftMm, i)
  }

  /** Does one side alone keep an edge out until the least growth so far? The side that did so last is asked first. */
  #isKeptOut(u1: number, v1: number, u2: number, v2: number): boolean {
    const { count, nx, ny, start, rate } = this.#shape
    const { shiftMm } = this.#blur
    for (let k = 0; k < count; k += 1) {
      const i = k === 0 ? this.#side : k - 1
      const needed = this.#least * numberAt(rate, i) + numberAt(start, i) - numberAt(shiftMm, i)
      const [x, y] = [numberAt(nx, i), numberAt(ny, i)]
      if (x * u1 + y * v1 >= needed && x * u2 + y * v2 >= needed) {
        this.#side = i
        return true
      }
    }
    return false
  }

  #meet(u1: number, v1: number, u2: number, v2: number): void {
    if (this.#isKeptOut(u1, v1, u2, v2)) return
    const [du, dv] = [u2 - u1, v2 - v1]
    let [low, lowValue] = [0, this.#settledValue(u1, v1)]
    let lowSlope = this.#slopeAt(u1, v1, du, dv)
    let [high, highValue] = [1, this.#settledValue(u2, v2)]
    let highSlope = this.#slopeAt(u2, v2, du, dv)
    for (let round = 0; round < 40 && lowSlope < 0 && highSlope > 0; round += 1) {
      const t = (lowValue - highValue + highSlope * high - lowSlope * low) / (highSlope - lowSlope)
      const floor = lowValue + lowSlope * (t - low)
      if (floor >= this.#least - 1e-9 || !(t > low && t < high)) return
      const [u, v] = [u1 + t * du, v1 + t * dv]
      const value = this.#settledValue(u, v)
      const slope = this.#slopeAt(u, v, du, dv)
      if (slope < 0) [low, lowValue, lowSlope] = [t, value, slope]
      else [high, highValue, highSlope] = [t, value, slope]
    }
  }

  /** Growth at which a place is reached, noted if it is the least so far. */
  #settledValue(u: number, v: number): number {
    const value = this.#valueAt(u, v)
    if (value < this.#least) {
      this.#least = value
      this.#settledBy = this.#side
      this.#settledAside = numberAt(this.#shape.nx, this.#side) * v - numberAt(this.#shape.ny, this.#side) * u
    }
    return value
  }

  /** Growth at which a place is reached; notes the side that reaches it last. */
  #valueAt(u: number, v: number): number {
    const { count, nx, ny, start, rate } = this.#shape
    const { sin, cos, shiftMm } = this.#blur
    let most = -Infinity
    for (let i = 0; i < count; i += 1) {
      const out = numberAt(nx, i) * u + numberAt(ny, i) * v
      const aside = numberAt(nx, i) * v - numberAt(ny, i) * u
      const blurred = (out < 0 ? out * cos : out) + Math.abs(aside) * sin + numberAt(shiftMm, i)
      const value = (blurred - numberAt(start, i)) / numberAt(rate, i)
      if (value > most) {
        most = value
        this.#side = i
      }
    }
    return most
  }

  /** How that growth changes along a direction, by the side noted last. */
  #slopeAt(u: number, v: number, du: number, dv: number): number {
    const { nx, ny, rate } = this.#shape
    const { sin, cos } = this.#blur
    const i = this.#side
    const out = numberAt(nx, i) * u + numberAt(ny, i) * v
    const aside = numberAt(nx, i) * v - numberAt(ny, i) * u
    const outChange = (numberAt(nx, i) * du + numberAt(ny, i) * dv) * (out < 0 ? cos : 1)
    const asideChange = (numberAt(nx, i) * dv - numberAt(ny, i) * du) * sin * Math.sign(aside)
    return (outChange + asideChange) / numberAt(rate, i)
  }
}
