import { InvariantError } from '../units'
import { fitMixture, mixtureLog, type ColourMixture } from './colourMixture'
import type { Features } from './features'
import { GridCut } from './gridCut'
import { strokeReach } from './strokeReach'
import { changedNear } from './changedNear'
import { countedSlices } from './countedSlices'
import { floodFrom, withoutHoles, type Mask } from './maskRegions'
import type { PixelGraph } from './pixelGraph'
import { strokePlaces, type Stroke } from './stroke'

const MOST_SAMPLES = 3000
const WOOD_PARTS = 6
const OTHER_PARTS = 10
/** A pixel's own evidence counts for no more than this, so that no colour is ever certain. */
const MOST_EVIDENCE = 6
const SURE = 1e6
/** What a stroke says of the even-coloured place that it lies in. */
const REACH_EVIDENCE = 6
/** So many strokes teach the colours everywhere; later ones only mend where they lie. */
const TEACHING_STROKES = 5
const STEPS_A_SLICE = 150
const USUAL_SLICES = 150
/** Of the whole, until the strokes' reach is known. */
const REACH_SHARE = 0.05
/** Before anything is known, the rim of the picture shows what is not the slab. */
const RIM_SHARE = 0.02

function sampled({ rows, dimensions: n }: Features, isChosen: (at: number) => boolean): Float32Array {
  const chosen: number[] = []
  for (let at = 0; at < rows.length / n; at++) if (isChosen(at)) chosen.push(at)
  const stride = Math.max(1, chosen.length / MOST_SAMPLES)
  const samples = new Float32Array(Math.floor(chosen.length / stride) * n)
  for (let s = 0; s < samples.length / n; s++) {
    const at = chosen[Math.floor(s * stride)] ?? 0
    samples.set(rows.subarray(at * n, at * n + n), s * n)
  }
  return samples
}

function strokePixels(strokes: readonly Stroke[], { widthPx, heightPx, factor }: Features): number[] {
  return strokes.flatMap((stroke) =>
    strokePlaces(stroke, factor / 2).flatMap(([x, y]) => {
      const i = Math.floor(x / factor)
      const j = Math.floor(y / factor)
      return i < 0 || j < 0 || i >= widthPx || j >= heightPx ? [] : [j * widthPx + i]
    }),
  )
}

/** +1 on wood strokes, −1 on the others. */
function strokeMarks(strokes: readonly Stroke[], features: Features): Int8Array {
  const marks = new Int8Array(features.widthPx * features.heightPx)
  for (const stroke of strokes) {
    for (const at of strokePixels([stroke], features)) marks[at] = stroke.kind === 'wood' ? 1 : -1
  }
  return marks
}

function isRim({ widthPx, heightPx }: Features, at: number): boolean {
  const rim = Math.round(RIM_SHARE * widthPx)
  const x = at % widthPx
  const y = Math.floor(at / widthPx)
  return x < rim || y < rim || x >= widthPx - rim || y >= heightPx - rim
}

function evidenceAt(features: Features, wood: ColourMixture, other: ColourMixture, at: number): number {
  const value = mixtureLog(wood, features.rows, at) - mixtureLog(other, features.rows, at)
  return Math.max(-MOST_EVIDENCE, Math.min(MOST_EVIDENCE, value))
}

/** Only what hangs together with a stroke on the wood, holes filled. */
function kept(mask: Mask, marks: Int8Array): Mask {
  const seeds: number[] = []
  for (let at = 0; at < marks.length; at++) if (marks[at] === 1) seeds.push(at)
  return withoutHoles({ ...mask, inside: floodFrom(mask, seeds, 1) })
}

interface Scene {
  readonly features: Features
  readonly graph: PixelGraph
  /** +1 on wood strokes, −1 on the others. */
  readonly marks: Int8Array
  readonly reach: Float32Array
}

/** For each pixel, how strongly it is drawn to the wood (above zero) or to the rest. Yields between slices. */
function* pulls({ features, marks, reach }: Scene, known: Mask | null): Generator<void, Float32Array> {
  const { dimensions, widthPx } = features
  const isWood = (at: number): boolean => marks[at] === 1 || (marks[at] === 0 && known?.inside[at] === 1)
  const isOther = (at: number): boolean =>
    marks[at] === -1 || (marks[at] === 0 && (known === null ? isRim(features, at) : known.inside[at] === 0))
  const wood = yield* fitMixture(sampled(features, isWood), dimensions, WOOD_PARTS)
  const other = yield* fitMixture(sampled(features, isOther), dimensions, OTHER_PARTS)
  const pull = new Float32Array(marks.length)
  for (let at = 0; at < pull.length; at++) {
    const mark = marks[at] ?? 0
    const evidence =
      mark === 0 ? evidenceAt(features, wood, other, at) + REACH_EVIDENCE * (reach[at] ?? 0) : 0
    pull[at] = mark * SURE + evidence
    if (at % (8 * widthPx) === 0) yield
  }
  return pull
}

/** Learns the colours, and cuts. Yields between slices. */
function* oneRound(scene: Scene, known: Mask | null): Generator<void, Mask> {
  const { features, graph, marks } = scene
  const terminals = yield* pulls(scene, known)
  const { neighbours, capacities } = graph
  const nodeCount = terminals.length
  const cut = new GridCut({ nodeCount, neighbours, capacities: capacities.slice(), terminals })
  yield
  while (!cut.step(STEPS_A_SLICE)) yield
  const inside = marks.map((_, at) => (cut.isSource(at) ? 1 : 0))
  return { widthPx: features.widthPx, heightPx: features.heightPx, inside: Uint8Array.from(inside) }
}

/**
 * Which pixels belong to the slab: colours on both sides are learned from the strokes and from the last answer, then
 * the cheapest cut between them is taken; so on, `rounds` times (after Rother, Kolmogorov and Blake, SIGGRAPH 2004).
 * Yields the share done between slices of work.
 * @param strokes at least one on wood
 * @param before  the mask that the strokes but the last gave; null at the beginning
 */
export function* woodMask(
  features: Features,
  graph: PixelGraph,
  strokes: readonly Stroke[],
  before: Mask | null,
  rounds: number,
): Generator<number, Mask> {
  const marks = strokeMarks(strokes, features)
  const reach = yield* countedSlices(strokeReach(features, graph, marks), 0, REACH_SHARE, 1)
  const scene: Scene = { features, graph, marks, reach }
  const touched = strokePixels(strokes.slice(-1), features)
  let mask = before
  for (let round = 0; round < rounds; round++) {
    const from = REACH_SHARE + ((1 - REACH_SHARE) * round) / rounds
    const to = REACH_SHARE + ((1 - REACH_SHARE) * (round + 1)) / rounds
    const cut = yield* countedSlices(oneRound(scene, mask), from, to, USUAL_SLICES)
    const isTeaching = before === null || strokes.length <= TEACHING_STROKES
    mask = kept(isTeaching ? cut : changedNear(before, cut, touched), marks)
  }
  if (mask === null) throw new InvariantError('no round of cutting was asked for', { rounds })
  return mask
}
