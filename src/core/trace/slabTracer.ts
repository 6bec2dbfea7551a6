import { pxPoint, type PxPoint } from '../geometry'
import { countedSlices } from './countedSlices'
import { featuresOf, type Features } from './features'
import { maskOutline } from './maskOutline'
import type { Mask } from './maskRegions'
import { reducedColours, type Picture } from './picture'
import { pixelGraph, type PixelGraph } from './pixelGraph'
import { refinedOutline } from './refineOutline'
import { strokePlaces, type Stroke } from './stroke'
import { unitPx } from './unitPx'
import { woodMask } from './woodMask'

/** The longer side that colours are told apart at: the rest is found on the sharp photo. */
const ROUGH_SIDE_PX = 500
const SMOOTHNESS = 10
/** A stroke so near to the outline, in steps, mends the line and not the colours. */
const FINE_STEPS = 10
const FIRST_ROUNDS = 4
const NEXT_ROUNDS = 2
/** Shares of the whole and of one stroke, for the progress that is told. */
const PREPARED_SHARE = 0.05
const CUT_SHARE = 0.9
const USUAL_SLICES = 8

export interface OutlineProposal {
  /** Positive ring in photo pixels; empty when no wood was marked. */
  readonly ringPx: readonly PxPoint[]
}

type Place = readonly [x: number, y: number]

interface Answer {
  readonly stroke: Stroke | null
  /** Null as long as no stroke lies on wood. */
  readonly mask: Mask | null
  /** The strokes that the mask was cut by; the others only hold the outline in place. */
  readonly coarse: readonly Stroke[]
  readonly ring: readonly Place[]
}

const NOTHING: Answer = { stroke: null, mask: null, coarse: [], ring: [] }

interface Prepared {
  readonly features: Features
  readonly graph: PixelGraph
}

function isFineStroke(stroke: Stroke, ring: readonly Place[], nearPx: number): boolean {
  return strokePlaces(stroke, 2).every(([x, y]) => ring.some(([u, v]) => Math.hypot(u - x, v - y) <= nearPx))
}

const sameStroke = (a: Stroke, b: Stroke): boolean =>
  a.kind === b.kind &&
  a.fromPx[0] === b.fromPx[0] &&
  a.fromPx[1] === b.fromPx[1] &&
  a.toPx[0] === b.toPx[0] &&
  a.toPx[1] === b.toPx[1]

/**
 * Finds a slab's outline in one photo from strokes. Remembers its answer after each stroke, so that one more stroke, or
 * one taken back, costs one step; the answer depends on the strokes and their order alone.
 */
export class SlabTracer {
  readonly #picture: Picture
  readonly #answers: Answer[] = []
  #prepared: Prepared | null = null

  constructor(picture: Picture) {
    this.#picture = picture
  }

  /**
   * The outline that the strokes mean. Yields the share done, 0 to 1, between slices of work.
   * @returns an empty ring as long as no stroke lies on wood
   */
  *outline(strokes: readonly Stroke[]): Generator<number, OutlineProposal> {
    if (!strokes.some(({ kind }) => kind === 'wood')) return { ringPx: [] }
    const prepared = yield* countedSlices(this.#prepare(), 0, PREPARED_SHARE, USUAL_SLICES)
    this.#forgetBeyond(strokes)
    for (let n = this.#answers.length; n < strokes.length; n++) {
      const stroke = strokes[n]
      if (stroke === undefined) break
      const work = this.#next(strokes.slice(0, n + 1), stroke, prepared)
      let turn = work.next()
      while (turn.done !== true) {
        yield PREPARED_SHARE + ((1 - PREPARED_SHARE) * (n + turn.value)) / strokes.length
        turn = work.next()
      }
      this.#answers.push(turn.value)
    }
    return { ringPx: (this.#answers.at(-1)?.ring ?? []).map(([x, y]) => pxPoint(x, y)) }
  }

  *#next(given: readonly Stroke[], stroke: Stroke, prepared: Prepared): Generator<number, Answer> {
    const before = this.#answers.at(-1) ?? NOTHING
    if (!given.some(({ kind }) => kind === 'wood')) return { ...NOTHING, stroke, coarse: given }
    const { mask } = before
    if (mask !== null && isFineStroke(stroke, before.ring, FINE_STEPS * unitPx(this.#picture))) {
      return { ...before, stroke, ring: yield* this.#refined(mask, given, prepared, 0) }
    }
    const coarse = [...before.coarse, stroke]
    const work = woodMask(
      prepared.features,
      prepared.graph,
      coarse,
      mask,
      mask === null ? FIRST_ROUNDS : NEXT_ROUNDS,
    )
    let turn = work.next()
    while (turn.done !== true) {
      yield turn.value * CUT_SHARE
      turn = work.next()
    }
    const ring = yield* this.#refined(turn.value, given, prepared, CUT_SHARE)
    return { stroke, mask: turn.value, coarse, ring }
  }

  *#refined(
    mask: Mask,
    strokes: readonly Stroke[],
    { features: { factor } }: Prepared,
    from: number,
  ): Generator<number, readonly Place[]> {
    const rough = maskOutline(mask).map(([x, y]) => [x * factor, y * factor] as const)
    if (rough.length < 8) return rough
    yield from
    return yield* countedSlices(refinedOutline(this.#picture, rough, strokes), from, 1, USUAL_SLICES)
  }

  *#prepare(): Generator<void, Prepared> {
    if (this.#prepared !== null) return this.#prepared
    const { widthPx, heightPx } = this.#picture
    const factor = Math.max(1, Math.round(Math.max(widthPx, heightPx) / ROUGH_SIDE_PX))
    const colours = yield* reducedColours(this.#picture, factor)
    const features = featuresOf(colours)
    yield
    this.#prepared = { features, graph: yield* pixelGraph(features, SMOOTHNESS) }
    return this.#prepared
  }

  #forgetBeyond(strokes: readonly Stroke[]): void {
    let same = 0
    while (same < this.#answers.length && same < strokes.length) {
      const a = this.#answers[same]?.stroke
      const b = strokes[same]
      if (!a || !b || !sameStroke(a, b)) break
      same++
    }
    this.#answers.length = same
  }
}
