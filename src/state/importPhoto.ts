import { type ImageFileFacts, inspectImageFile, withoutLocation } from '../core/photo'
import type { Photo } from '../core/plan'
import { ok, problem, type Result } from '../core/units'
import { newId } from './newId'
import { asResult, photoClient } from './photoDesk'
import { photoHash } from './photoHash'
import { planStorage } from './storageDesk'

export interface ImportOptions {
  /** A photo that is too large is stored in a smaller copy instead of being refused. */
  readonly reduce?: boolean
  readonly signal?: AbortSignal
  /** 0 to 1, by stages. */
  readonly onProgress?: (fraction: number) => void
}

/** What a reduced copy has at most: as much as a good phone takes, and a third of the memory of the largest we work. */
export const REDUCED_MEGAPIXELS = 24

/** No camera writes larger stills; what is larger would only fill the memory before it is refused. */
const MOST_FILE_BYTES = 400_000_000

const NAME_LIMIT = 200

interface Picture {
  readonly bytes: Uint8Array<ArrayBuffer>
  readonly facts: ImageFileFacts
}

async function pictureOf(blob: Blob, { reduce = false, ...job }: ImportOptions): Promise<Result<Picture>> {
  if (blob.size > MOST_FILE_BYTES) {
    return problem('photo-file-too-large', { megabytes: Math.round(blob.size / 1e6) })
  }
  const bytes = new Uint8Array(await blob.arrayBuffer())
  const facts = inspectImageFile(bytes)
  if (facts.ok) return ok({ bytes, facts: facts.value })
  if (facts.problem.code !== 'photo-too-large' || !reduce) return facts
  const smaller = await asResult(photoClient().reduce(blob, REDUCED_MEGAPIXELS, job))
  return smaller.ok ? pictureOf(smaller.value.blob, {}) : smaller
}

/** A header can say anything: only what decodes, and to the stated size, is a photo. */
async function checkDecoded(hash: string, photo: Blob, { facts }: Picture): Promise<Result<null>> {
  const wasOpen = photoClient().isOpen(hash)
  const size = await asResult(photoClient().open(hash, photo))
  if (!size.ok) {
    if (!wasOpen) await photoClient().close(hash)
    return size
  }
  const { widthPx, heightPx } = size.value
  if (widthPx === facts.widthPx && heightPx === facts.heightPx) return ok(null)
  if (!wasOpen) await photoClient().close(hash)
  return problem('photo-size-differs', {
    widthPx,
    heightPx,
    statedWidthPx: facts.widthPx,
    statedHeightPx: facts.heightPx,
  })
}

/** The stored photo as a plan names it. */
const photoOf = (hash: string, fileName: string, facts: ImageFileFacts): Photo => ({
  id: newId(),
  hash,
  fileName: fileName.slice(0, NAME_LIMIT),
  mediaType: facts.mediaType,
  widthPx: facts.widthPx,
  heightPx: facts.heightPx,
  focalLength35mm: facts.focalLength35mm,
  face: 'top',
  observations: [],
  straightLines: [],
})

/**
 * Takes a photo in: checks it, removes where and when it was taken, decodes it once to be sure, and stores its bytes
 * under their hash.
 * @returns the photo for addPhotoSlab or replacePhoto; problems of `inspectImageFile` (for 'photo-too-large' ask the
 *          maker and come again with `reduce`), 'photo-unreadable', 'photo-size-differs', 'photo-file-too-large',
 *          'storage-full' and other storage problems. Rejects with the signal's reason when cancelled.
 */
export async function importPhoto(
  blob: Blob,
  fileName: string,
  options: ImportOptions = {},
): Promise<Result<Photo>> {
  const { signal, onProgress = () => undefined } = options
  const picture = await pictureOf(blob, options)
  if (!picture.ok) return picture
  signal?.throwIfAborted()
  onProgress(0.3)
  const { facts } = picture.value
  const clean = new Uint8Array(withoutLocation(picture.value.bytes))
  const hash = await photoHash(clean)
  const photo = new Blob([clean], { type: facts.mediaType })
  onProgress(0.5)
  const decoded = await checkDecoded(hash, photo, picture.value)
  if (!decoded.ok) return decoded
  signal?.throwIfAborted()
  onProgress(0.9)
  const refusal = await (await planStorage()).keepPhoto(hash, photo)
  if (refusal !== null) return { ok: false, problem: refusal }
  onProgress(1)
  return ok(photoOf(hash, fileName, facts))
}
