import { pxPoint, type PxPoint } from '../geometry'
import { EdgeCosts } from './edgeCosts'
import { greyPyramid } from './greyPyramid'
import { LeastCostSearch, type SearchWindow } from './leastCostSearch'
import type { Picture } from './picture'

type Place = readonly [x: number, y: number]

/** A pointer so many places away from the last pin is searched for at once; farther ones at a coarser level. */
const NEAR_PLACES = 400
/** The window round a pin, at the coarse level: a way may swing out by a tenth. */
const WINDOW_PLACES = 440
/** Finer levels look this far to both sides of the coarser way. */
const CORRIDOR_PLACES = 3

/** So many places at each end of an accepted way teach how the edge looks. */
const SURE_PLACES = 30

/** The line so far: what was accepted, and what follows the pointer. */
export interface FollowedLine {
  readonly acceptedPx: readonly PxPoint[]
  readonly livePx: readonly PxPoint[]
}

interface Stretch {
  readonly fromPx: PxPoint
  readonly px: readonly PxPoint[]
}

/** How often a place of the live line must stay the same, and how far back it must be, to settle by itself. */
const SETTLING_MOVES = 8
const SETTLING_TAIL_PX = 60

/**
 * A line that clings to the edge under the pointer. Pins are exact; between them it is the least-cost way over
 * `EdgeCosts`, found at a level where the way is short and made sharp level by level within a narrow corridor.
 */
export class EdgeFollower {
  readonly #levels: readonly EdgeCosts[]
  readonly #stretches: Stretch[] = []
  #fromPx: PxPoint | null = null
  #accepted: readonly PxPoint[] = []
  #live: readonly PxPoint[] = []
  #searches = new Map<number, LeastCostSearch>()
  #stable: { places: readonly PxPoint[]; moves: number } = { places: [], moves: 0 }

  /** Prepares the photo: once, and in well under a second for 12 megapixels. */
  constructor(picture: Picture) {
    this.#levels = greyPyramid(picture).map((level) => new EdgeCosts(level))
  }

  /** The first pin; what was there before is forgotten. */
  start(at: PxPoint): FollowedLine {
    this.#stretches.length = 0
    this.#pinAt(at)
    return this.line()
  }

  /** The pointer moved: the live line leads to it along the edge, or straight. */
  moveTo(at: PxPoint, isStraight = false): FollowedLine {
    if (this.#fromPx === null) return this.start(at)
    this.#live = isStraight ? [this.#fromPx, at] : this.#wayTo(this.#fromPx, at)
    if (!isStraight) this.#settle()
    return this.line()
  }

  /** Accepts the live line to its end, learns how that edge looked, and goes on from there. */
  pin(): FollowedLine {
    const end = this.#live.at(-1)
    if (end !== undefined) this.#accept(this.#live, end)
    return this.line()
  }

  /** Gives back the last accepted stretch; without one, the first pin. */
  takeBack(): FollowedLine {
    const last = this.#stretches.pop()
    if (last === undefined) {
      this.#fromPx = null
      this.#accepted = []
      this.#live = []
    } else this.#pinAt(last.fromPx)
    return this.line()
  }

  line(): FollowedLine {
    return { acceptedPx: this.#accepted, livePx: this.#live }
  }

  #accept(way: readonly PxPoint[], end: PxPoint): void {
    const fromPx = this.#fromPx ?? end
    this.#stretches.push({ fromPx, px: way.slice(0, -1) })
    if (way.length > 2) this.#learn(way)
    this.#pinAt(end)
  }

  #pinAt(at: PxPoint): void {
    this.#fromPx = at
    this.#accepted = [...this.#stretches.flatMap(({ px }) => px), at]
    this.#live = [at]
    this.#searches = new Map()
    this.#stable = { places: [], moves: 0 }
  }

  /** What has stayed the same for some moves, well before the pointer, is accepted. */
  #settle(): void {
    const { places, moves } = this.#stable
    let same = 0
    while (same < places.length && samePlace(places[same], this.#live[same])) same++
    if (same < SETTLING_TAIL_PX || moves === 0) {
      this.#stable = { places: this.#live, moves: 1 }
      return
    }
    this.#stable = { places: places.slice(0, same), moves: moves + 1 }
    const keep = same - SETTLING_TAIL_PX
    const end = this.#live[keep]
    if (this.#stable.moves <= SETTLING_MOVES || keep < SETTLING_TAIL_PX || end === undefined) return
    const live = this.#live.slice(keep)
    this.#accept(this.#live.slice(0, keep + 1), end)
    this.#live = live
  }

  #learn(way: readonly PxPoint[]): void {
    // Near its ends, where the maker showed the place, the way is surest to run on the edge that is meant.
    const sure = [...way.slice(0, SURE_PLACES), ...way.slice(-SURE_PLACES)]
    for (const costs of this.#levels) costs.learn(sure.map((at) => placeOf(costs, at)))
  }

  #wayTo(from: PxPoint, to: PxPoint): readonly PxPoint[] {
    const distancePx = Math.hypot(to[0] - from[0], to[1] - from[1])
    let index = 0
    while (
      index < this.#levels.length - 1 &&
      distancePx / (this.#levels[index]?.level.factor ?? 1) > NEAR_PLACES
    )
      index++
    let way = this.#coarseWay(index, from, to)
    for (let finer = index - 1; finer >= 0 && way !== null; finer--)
      way = this.#finerWay(finer, way, from, to)
    if (way === null) return [from, to]
    return [from, ...way.slice(1, -1).map(([x, y]) => pxPoint(x + 0.5, y + 0.5)), to]
  }

  #coarseWay(index: number, from: PxPoint, to: PxPoint): readonly Place[] | null {
    const costs = this.#levels[index]
    if (costs === undefined) return null
    const start = placeOf(costs, from)
    let search = this.#searches.get(index)
    if (search === undefined) {
      search = new LeastCostSearch(costs, this.#windowAround(costs, index, start), start)
      this.#searches.set(index, search)
    }
    return search.wayTo(...placeOf(costs, to))
  }

  #windowAround(costs: EdgeCosts, index: number, [x, y]: Place): SearchWindow {
    const { widthPx, heightPx } = costs.level
    // The coarsest level is small: its window is the whole photo, so that no pointer is too far away.
    if (index === this.#levels.length - 1) return { x: 0, y: 0, wide: widthPx, high: heightPx }
    const left = Math.max(0, x - WINDOW_PLACES)
    const top = Math.max(0, y - WINDOW_PLACES)
    return {
      x: left,
      y: top,
      wide: Math.min(widthPx, x + WINDOW_PLACES + 1) - left,
      high: Math.min(heightPx, y + WINDOW_PLACES + 1) - top,
    }
  }

  #finerWay(index: number, coarse: readonly Place[], from: PxPoint, to: PxPoint): readonly Place[] | null {
    const costs = this.#levels[index]
    if (costs === undefined) return null
    const { widthPx, heightPx } = costs.level
    const start = placeOf(costs, from)
    const goal = placeOf(costs, to)
    const doubled = [start, ...coarse.map(([x, y]): Place => [2 * x, 2 * y]), goal]
    const window = boundsOf(doubled, CORRIDOR_PLACES + 1, widthPx, heightPx)
    const side = 2 * CORRIDOR_PLACES + 2
    const rooms = doubled.map(([x, y]) => ({
      x: x - CORRIDOR_PLACES,
      y: y - CORRIDOR_PLACES,
      wide: side,
      high: side,
    }))
    return new LeastCostSearch(costs, window, start, rooms).wayTo(...goal)
  }
}

const samePlace = (a: PxPoint | undefined, b: PxPoint | undefined): boolean =>
  a !== undefined && b !== undefined && a[0] === b[0] && a[1] === b[1]

function placeOf({ level }: EdgeCosts, [x, y]: PxPoint): Place {
  return [
    Math.min(level.widthPx - 1, Math.max(0, Math.floor(x / level.factor))),
    Math.min(level.heightPx - 1, Math.max(0, Math.floor(y / level.factor))),
  ]
}

function boundsOf(places: readonly Place[], byPx: number, widthPx: number, heightPx: number): SearchWindow {
  let [left, top, right, bottom] = [Infinity, Infinity, 0, 0]
  for (const [x, y] of places) {
    left = Math.min(left, x)
    top = Math.min(top, y)
    right = Math.max(right, x)
    bottom = Math.max(bottom, y)
  }
  left = Math.max(0, left - byPx)
  top = Math.max(0, top - byPx)
  const wide = Math.min(widthPx, right + byPx + 2) - left
  return { x: left, y: top, wide, high: Math.min(heightPx, bottom + byPx + 2) - top }
}
