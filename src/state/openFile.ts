import { inspectImageFile } from '../core/photo'
import type { LostPart, Photo, Plan } from '../core/plan'
import { ok, type Result } from '../core/units'
import { importPhoto, type ImportOptions } from './importPhoto'
import { photoHash } from './photoHash'
import { isPlanText, isZip } from './fileKind'
import { adoptPlan, type StoredTwin } from './plans'
import type { PlanStorage } from './planStorage'
import { planStorage } from './storageDesk'

export type OpenedFile =
  /** It lies on the bench. */
  | {
      readonly kind: 'plan'
      readonly plan: Plan
      readonly lost: readonly LostPart[]
      readonly twin?: StoredTwin
    }
  /** It is stored; a command puts it in the plan. */
  | { readonly kind: 'photo'; readonly photo: Photo }

interface PlacedPhoto {
  readonly photo: Photo
  readonly slabName: string
}

const photosOf = (plan: Plan): readonly PlacedPhoto[] =>
  plan.slabs.flatMap(({ name, capture }) =>
    capture.kind === 'photo' ? capture.photos.map((photo) => ({ photo, slabName: name })) : [],
  )

/** The bytes are what the plan says they are: same hash, an image, of the stated size. */
async function isAsStated(photo: Photo, bytes: Uint8Array<ArrayBuffer>): Promise<boolean> {
  if ((await photoHash(bytes)) !== photo.hash) return false
  const facts = inspectImageFile(bytes)
  const { widthPx, heightPx } = photo
  return facts.ok && facts.value.widthPx === widthPx && facts.value.heightPx === heightPx
}

/** Stores one photo of a plan file. @returns the sentence for what was lost, or null */
async function takeIn(
  storage: PlanStorage,
  { photo, slabName }: PlacedPhoto,
  bytes: Uint8Array<ArrayBuffer> | undefined,
): Promise<LostPart | null> {
  const values = { name: photo.fileName, owner: slabName }
  if ((await storage.readPhoto(photo.hash)) !== null) return null
  if (bytes === undefined) return { code: 'lost-photo-file', values }
  if (!(await isAsStated(photo, bytes))) return { code: 'lost-photo-damaged', values }
  return storage.keepPhoto(photo.hash, new Blob([bytes], { type: photo.mediaType }))
}

async function openPlanFile(file: Blob, name: string): Promise<Result<OpenedFile>> {
  // Loaded when asked for: the first look at the page needs no unpacker.
  const { decodePlanFile } = await import('./planFile')
  const read = decodePlanFile(new Uint8Array(await file.arrayBuffer()))
  if (!read.ok) return read
  const storage = await planStorage()
  const lost: LostPart[] = [...read.value.lost]
  for (const placed of photosOf(read.value.plan)) {
    const loss = await takeIn(storage, placed, read.value.photos.get(placed.photo.hash))
    if (loss !== null) lost.push(loss)
  }
  if (read.value.lost.length > 0) await storage.keepOriginal(name, file)
  const opened = await adoptPlan(read.value.plan, lost)
  return opened.ok ? ok({ kind: 'plan', ...opened.value }) : opened
}

/**
 * Opens what the maker chose or dropped: a plan file comes on the bench; a photo is taken in for a command to place.
 * @returns problems of reading plan files and of importing photos; the bench then stays as it is
 */
export async function openFile(file: File, options: ImportOptions = {}): Promise<Result<OpenedFile>> {
  const head = new Uint8Array(await file.slice(0, 256).arrayBuffer())
  if (isZip(head) || isPlanText(head)) return openPlanFile(file, file.name)
  const photo = await importPhoto(file, file.name, options)
  return photo.ok ? ok({ kind: 'photo', photo: photo.value }) : photo
}
