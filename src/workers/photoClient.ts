import type {
  ClickedThing,
  PhotoSharpness,
  PixelArea,
  RectifyingTransform,
  RefinedClick,
} from '../core/photo'
import { InvariantError } from '../core/units'
import type { PhotoAnswer, PhotoSize, PhotoTask, ReducedPhoto } from './protocol'
import { type JobOptions, JobProblem, WorkerLink, type WorkerLike } from './workerLink'

/** Decoded photos take much memory: 12 MP are 48 MB. */
const IDLE_MS = 5 * 60_000

const makePhotoWorker = (): WorkerLike =>
  new Worker(new URL('./photo.worker.ts', import.meta.url), { type: 'module' })

/**
 * The photo worker: holds decoded photos and draws from them. Every call may be the first after a crash or after a long
 * rest: the photos that were opened are then opened again from their bytes, which the browser keeps.
 */
export class PhotoClient {
  readonly #link: WorkerLink<PhotoTask, PhotoAnswer>
  readonly #bytes = new Map<string, Blob>()
  readonly #opened = new Map<string, Promise<PhotoSize>>()

  constructor(makeWorker: () => WorkerLike = makePhotoWorker, idleMs = IDLE_MS) {
    this.#link = new WorkerLink(makeWorker, () => this.#opened.clear(), idleMs)
  }

  /** Decodes a photo upright and keeps its pixels. Rejects with JobProblem 'photo-unreadable' when it is damaged. */
  open(hash: string, bytes: Blob): Promise<PhotoSize> {
    this.#bytes.set(hash, bytes)
    return this.#ensureOpen(hash)
  }

  /** Whether the photo was opened before and not closed. */
  isOpen(hash: string): boolean {
    return this.#bytes.has(hash)
  }

  /** The whole photo, its longer side at most `maxSidePx`. The caller closes the bitmap. */
  async preview(hash: string, maxSidePx: number, options?: JobOptions): Promise<ImageBitmap> {
    return this.#bitmap(hash, { kind: 'preview', hash, maxSidePx }, options)
  }

  /** A part of the photo, drawn at the given size: the sharp part for zoom and loupe. */
  async crop(
    hash: string,
    area: PixelArea,
    outWidthPx: number,
    outHeightPx: number,
    options?: JobOptions,
  ): Promise<ImageBitmap> {
    return this.#bitmap(hash, { kind: 'crop', hash, area, outWidthPx, outHeightPx }, options)
  }

  /** The slab from straight above. A newer call for the same photo rejects the older one with AbortError. */
  async rectify(hash: string, transform: RectifyingTransform, options?: JobOptions): Promise<ImageBitmap> {
    return this.#bitmap(hash, { kind: 'rectify', hash, transform }, options)
  }

  /** Where the clicked thing stands, for each click; one that is not sure stays where it is. */
  async refine(hash: string, thing: ClickedThing, options?: JobOptions): Promise<readonly RefinedClick[]> {
    await this.#ensureOpen(hash)
    const answer = await this.#link.ask({ kind: 'refine', hash, thing }, options)
    if (answer.kind !== 'refined') throw new InvariantError('not refined clicks', { kind: answer.kind })
    return answer.clicks
  }

  /** Whether the photo is shaken or out of focus, by its own clearest edges. */
  async sharpness(hash: string, options?: JobOptions): Promise<PhotoSharpness> {
    await this.#ensureOpen(hash)
    const answer = await this.#link.ask({ kind: 'sharpness', hash }, options)
    if (answer.kind !== 'sharpness') throw new InvariantError('not a sharpness', { kind: answer.kind })
    return answer.sharpness
  }

  /** A JPEG of at most so many megapixels, of a photo that was not opened. */
  async reduce(bytes: Blob, mostMegapixels: number, options?: JobOptions): Promise<ReducedPhoto> {
    const answer = await this.#link.ask({ kind: 'reduce', bytes, mostMegapixels }, options)
    if (answer.kind !== 'reduced') throw new InvariantError('not a reduced photo', { kind: answer.kind })
    return answer.photo
  }

  /** Gives back the photo's memory. */
  async close(hash: string): Promise<void> {
    this.#bytes.delete(hash)
    if (!this.#opened.delete(hash)) return
    await this.#link.ask({ kind: 'close', hash })
  }

  /** Ends the worker for good, with what it had in hand. */
  end(): void {
    this.#link.end({ code: 'photo-worker-ended', values: {} })
    this.#bytes.clear()
    this.#opened.clear()
  }

  async #bitmap(hash: string, task: PhotoTask, options?: JobOptions): Promise<ImageBitmap> {
    await this.#ensureOpen(hash)
    const answer = await this.#link.ask(task, options)
    if (answer.kind !== 'bitmap') throw new InvariantError('not a bitmap', { kind: answer.kind })
    return answer.bitmap
  }

  #ensureOpen(hash: string): Promise<PhotoSize> {
    const known = this.#opened.get(hash)
    if (known !== undefined) return known
    const opening = this.#send(hash)
    this.#opened.set(hash, opening)
    // A photo that could not be opened is tried anew by the next call.
    opening.catch(() => {
      if (this.#opened.get(hash) === opening) this.#opened.delete(hash)
    })
    return opening
  }

  async #send(hash: string): Promise<PhotoSize> {
    const bytes = this.#bytes.get(hash)
    if (bytes === undefined) throw new JobProblem({ code: 'photo-not-open', values: {} })
    const answer = await this.#link.ask({ kind: 'open', hash, bytes })
    if (answer.kind !== 'size') throw new InvariantError('not a size', { kind: answer.kind })
    return answer.size
  }
}
