import { pxPoint, simplifyRing, type PxPoint } from '../core/geometry'
import {
  EdgeFollower,
  type FollowedLine,
  type Picture,
  SlabTracer,
  type Stroke,
  type VoidProposal,
  voidProposals,
} from '../core/trace'
import { assertNever } from '../core/units'
import { flatPoints } from './flatPoints'
import { type Breathe, JobFailed } from './jobQueue'
import type { FollowStep, TraceAnswer, TraceTask } from './traceProtocol'

/** How far the points of a proposed line may be thinned, px of the picture: well below what any photo tells. */
const THINNED_PX = 0.5

/** The pixels that lines are found on, and how many photo pixels one of them is wide. */
export interface TracedPicture {
  readonly picture: Picture
  readonly photoPxPerPx: number
}

/** A photo laid out for tracing, with what was prepared and found on it so far. */
interface LaidOut extends TracedPicture {
  readonly hash: string
  readonly tracer: SlabTracer
  follower: EdgeFollower | null
  line: { readonly id: string; acceptedCount: number } | null
}

/**
 * One photo at a time, and what is found on it: memory holds no more than one photo's pixels.
 * Knows nothing of workers or canvases, so that it can be tested without them.
 */
export class TraceTable {
  readonly #decode: (bytes: Blob) => Promise<TracedPicture>
  #laidOut: LaidOut | null = null

  constructor(decode: (bytes: Blob) => Promise<TracedPicture>) {
    this.#decode = decode
  }

  async perform(task: TraceTask, breathe: Breathe): Promise<TraceAnswer> {
    switch (task.kind) {
      case 'open':
        return this.#open(task.hash, task.bytes)
      case 'outline':
        return outlineFrom(this.#photo(task.hash), task.strokes, breathe)
      case 'voids':
        return voidsFrom(this.#photo(task.hash), task.outlinePx, breathe)
      case 'follow':
        return followed(this.#photo(task.hash), task.lineId, task.step)
      case 'warm':
        followerOf(this.#photo(task.hash))
        return { kind: 'ready' }
      default:
        return assertNever(task)
    }
  }

  async #open(hash: string, bytes: Blob): Promise<TraceAnswer> {
    if (this.#laidOut?.hash === hash) return { kind: 'ready' }
    this.#laidOut = null
    const traced = await this.#decode(bytes)
    this.#laidOut = { ...traced, hash, tracer: new SlabTracer(traced.picture), follower: null, line: null }
    return { kind: 'ready' }
  }

  #photo(hash: string): LaidOut {
    if (this.#laidOut?.hash !== hash) throw new JobFailed({ code: 'photo-not-open', values: {} })
    return this.#laidOut
  }
}

/** Does work to its end, with a look at the messages between its slices. */
async function finished<T>(work: Generator<number, T>, breathe: Breathe): Promise<T> {
  for (;;) {
    const turn = work.next()
    if (turn.done === true) return turn.value
    await breathe(turn.value)
  }
}

const scaled = ([x, y]: PxPoint, factor: number): PxPoint => pxPoint(x * factor, y * factor)

async function outlineFrom(
  { tracer, photoPxPerPx }: LaidOut,
  strokes: readonly Stroke[],
  breathe: Breathe,
): Promise<TraceAnswer> {
  const own = strokes.map(({ kind, fromPx, toPx }) => ({
    kind,
    fromPx: scaled(fromPx, 1 / photoPxPerPx),
    toPx: scaled(toPx, 1 / photoPxPerPx),
  }))
  const { ringPx } = await finished(tracer.outline(own), breathe)
  return { kind: 'outline', ringPx: flatPoints(thinned(ringPx), photoPxPerPx) }
}

const thinned = (ringPx: readonly PxPoint[]): readonly PxPoint[] =>
  ringPx.length < 8 ? ringPx : simplifyRing(ringPx, THINNED_PX)

async function voidsFrom(
  { picture, photoPxPerPx }: LaidOut,
  outlinePx: readonly PxPoint[],
  breathe: Breathe,
): Promise<TraceAnswer> {
  const own = outlinePx.map((at) => scaled(at, 1 / photoPxPerPx))
  const found = await finished(voidProposals(picture, own), breathe)
  const onPhoto = (proposal: VoidProposal): VoidProposal => ({
    ...proposal,
    ringPx: proposal.ringPx.map((at) => scaled(at, photoPxPerPx)),
  })
  return { kind: 'voids', proposals: found.map(onPhoto) }
}

function followerOf(photo: LaidOut): EdgeFollower {
  photo.follower ??= new EdgeFollower(photo.picture)
  return photo.follower
}

function followed(photo: LaidOut, lineId: string, step: FollowStep): TraceAnswer {
  const follower = followerOf(photo)
  if (step.kind === 'start') photo.line = { id: lineId, acceptedCount: 0 }
  const { line } = photo
  if (line?.id !== lineId) throw new JobFailed({ code: 'trace-line-lost', values: {} })
  const { acceptedPx, livePx } = stepped(follower, step, 1 / photo.photoPxPerPx)
  // A line is only ever added to at its end or given back from there.
  const kept = Math.min(line.acceptedCount, acceptedPx.length)
  line.acceptedCount = acceptedPx.length
  return {
    kind: 'line',
    kept,
    added: flatPoints(acceptedPx.slice(kept), photo.photoPxPerPx),
    live: flatPoints(livePx, photo.photoPxPerPx),
  }
}

function stepped(follower: EdgeFollower, step: FollowStep, factor: number): FollowedLine {
  switch (step.kind) {
    case 'start':
      return follower.start(scaled(step.at, factor))
    case 'move':
      return follower.moveTo(scaled(step.at, factor), step.isStraight)
    case 'pin':
      follower.moveTo(scaled(step.at, factor), step.isStraight)
      return follower.pin()
    case 'takeBack':
      return follower.takeBack()
  }
}
