import type { Plan } from '../core/plan'
import { noteOnBench } from './bench'
import { getPhotoBytes } from './photoDesk'
import { photoHashesIn } from './planStorage'

export interface SavedFile {
  readonly blob: Blob
  readonly fileName: string
  /** Photos that the plan names and this browser does not have: the file goes without them. */
  readonly missingPhotos: number
}

/** Letters and digits of any script stay; the rest is no good in a file's name everywhere. */
export const fileNameOf = (planName: string): string => {
  const plain = planName
    .normalize('NFC')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 80)
  return `${plain === '' ? 'plan' : plain}.waneline`
}

/** Plan and photos in one file, to keep or to hand on. The same plan makes the same bytes. */
export async function savePlanFile(plan: Plan): Promise<SavedFile> {
  // Loaded when asked for: the first look at the page needs no packer.
  const { encodePlanFile } = await import('./planFile')
  const photos = new Map<string, Uint8Array>()
  let missingPhotos = 0
  for (const hash of photoHashesIn(plan.slabs)) {
    const photo = await getPhotoBytes(hash)
    if (photo === null) missingPhotos++
    else photos.set(hash, new Uint8Array(await photo.arrayBuffer()))
  }
  const blob = new Blob([encodePlanFile(plan, photos)], { type: 'application/zip' })
  noteOnBench({ filedPlan: plan })
  return { blob, fileName: fileNameOf(plan.name), missingPhotos }
}
