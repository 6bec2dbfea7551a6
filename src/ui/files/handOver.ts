import { savePlanFile } from '../../state/planFiles'
import { planStore } from '../../state/planStore'
import { setNotice } from '../../state/sessionStore'
import { handOut } from './handOut'
import { reporting } from './reporting'

const mayShare = (file: File): boolean => {
  try {
    return navigator.canShare?.({ files: [file] }) ?? false
  } catch {
    return false
  }
}

/** A share sheet that was closed without a choice. */
const isTurnedDown = (error: unknown): boolean => error instanceof Error && error.name === 'AbortError'

/** The plan with its photos to another device: by the share sheet where it takes such a file, else as a file to keep. */
export async function handOver(): Promise<void> {
  const saved = await reporting(() => savePlanFile(planStore.getState().plan))
  if (saved === null) return
  if (saved.missingPhotos > 0) {
    setNotice({ code: 'photos-not-in-file', values: { count: saved.missingPhotos } })
  }
  const file = new File([saved.blob], saved.fileName, { type: saved.blob.type })
  if (!mayShare(file)) {
    handOut(saved.blob, saved.fileName)
    return
  }
  try {
    await navigator.share({ files: [file], title: saved.fileName })
  } catch (error) {
    if (!isTurnedDown(error)) handOut(saved.blob, saved.fileName)
  }
}

/** Whether this browser has a share sheet for files at all. */
export const hasShareSheet = (): boolean => typeof navigator.canShare === 'function'
