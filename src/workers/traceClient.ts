import type { PxPoint } from '../core/geometry'
import type { Stroke, VoidProposal } from '../core/trace'
import { InvariantError } from '../core/units'
import { pointsFromFlat } from './flatPoints'
import type { FollowStep, TraceAnswer, TraceTask } from './traceProtocol'
import { type JobOptions, WorkerLink, type WorkerLike } from './workerLink'

/** The pixels of a photo take 4 bytes each; a maker who thinks for longer waits a second for them. */
const IDLE_MS = 3 * 60_000

const makeTraceWorker = (): WorkerLike =>
  new Worker(new URL('./trace.worker.ts', import.meta.url), { type: 'module' })

/** A photo to trace on: its bytes are only asked for when the worker does not have it. */
export interface PhotoToTrace {
  readonly hash: string
  readonly bytes: () => Promise<Blob>
}

/** A line as the worker has it: of what was accepted before, the first `kept` points hold. */
export interface FollowAnswer {
  readonly kept: number
  readonly addedPx: readonly PxPoint[]
  readonly livePx: readonly PxPoint[]
}

/** The trace worker: finds outlines, voids and edges on one photo at a time. Every call may be the first after a rest. */
export class TraceClient {
  readonly #link: WorkerLink<TraceTask, TraceAnswer>
  #opened: { readonly hash: string; readonly ready: Promise<unknown> } | null = null

  constructor(makeWorker: () => WorkerLike = makeTraceWorker, idleMs = IDLE_MS) {
    this.#link = new WorkerLink(makeWorker, () => (this.#opened = null), idleMs, 'trace-worker-crashed')
  }

  /** The outline that the strokes mean, thinned; empty without wood. A newer call rejects an older with AbortError. */
  async outline(
    photo: PhotoToTrace,
    strokes: readonly Stroke[],
    options?: JobOptions,
  ): Promise<readonly PxPoint[]> {
    await this.#ensureOpen(photo)
    const answer = await this.#link.ask({ kind: 'outline', hash: photo.hash, strokes }, options)
    if (answer.kind !== 'outline') throw new InvariantError('not an outline', { kind: answer.kind })
    return pointsFromFlat(answer.ringPx)
  }

  /** Holes and cracks within an outline, as proposals. */
  async voids(
    photo: PhotoToTrace,
    outlinePx: readonly PxPoint[],
    options?: JobOptions,
  ): Promise<readonly VoidProposal[]> {
    await this.#ensureOpen(photo)
    const answer = await this.#link.ask({ kind: 'voids', hash: photo.hash, outlinePx }, options)
    if (answer.kind !== 'voids') throw new InvariantError('not voids', { kind: answer.kind })
    return answer.proposals
  }

  /** Gets a photo ready to be followed along its edges. */
  async warm(photo: PhotoToTrace, options?: JobOptions): Promise<void> {
    await this.#ensureOpen(photo)
    await this.#link.ask({ kind: 'warm', hash: photo.hash }, options)
  }

  /** One step of a line. Rejects with JobProblem 'trace-line-lost' when the worker no longer knows the line. */
  async follow(photo: PhotoToTrace, lineId: string, step: FollowStep): Promise<FollowAnswer> {
    await this.#ensureOpen(photo)
    const answer = await this.#link.ask({ kind: 'follow', hash: photo.hash, lineId, step })
    if (answer.kind !== 'line') throw new InvariantError('not a line', { kind: answer.kind })
    return {
      kept: answer.kept,
      addedPx: pointsFromFlat(answer.added),
      livePx: pointsFromFlat(answer.live),
    }
  }

  /** Ends the worker for good, with what it had in hand. */
  end(): void {
    this.#link.end({ code: 'trace-worker-ended', values: {} })
  }

  #ensureOpen(photo: PhotoToTrace): Promise<unknown> {
    if (this.#opened?.hash === photo.hash) return this.#opened.ready
    const ready = this.#send(photo)
    const opened = { hash: photo.hash, ready }
    this.#opened = opened
    ready.catch(() => {
      if (this.#opened === opened) this.#opened = null
    })
    return ready
  }

  async #send({ hash, bytes }: PhotoToTrace): Promise<unknown> {
    return this.#link.ask({ kind: 'open', hash, bytes: await bytes() })
  }
}
